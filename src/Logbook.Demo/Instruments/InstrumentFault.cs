namespace Logbook.Demo.Instruments;

/// <summary>What is wrong with a reading, the plant being right.</summary>
internal enum FaultKind
{
    /// <summary>Shows so much too much, in its unit.</summary>
    Offset,

    /// <summary>Shows its value times so much.</summary>
    Scale,

    /// <summary>Shows so much more too much with each hour, in its unit.</summary>
    Drift,

    /// <summary>Goes on showing what it showed first.</summary>
    Stuck,

    /// <summary>Says this: the digit of a look-and-listen point.</summary>
    Says,
}

/// <summary>A point that reads wrong from one time to another.</summary>
internal sealed record InstrumentFault(string Tag, DateTimeOffset From, DateTimeOffset To, FaultKind Kind, double Amount = 0)
{
    public bool Covers(string tag, DateTimeOffset at) => Tag == tag && From <= at && at < To;
}
