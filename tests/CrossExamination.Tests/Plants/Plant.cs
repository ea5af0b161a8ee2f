namespace CrossExamination.Tests.Plants;

/// <summary>A simulated line, hour after hour.</summary>
internal abstract class Plant
{
    /// <summary>What the instruments are declared to be uncertain by, in the order of the tags.</summary>
    public static readonly double[] Declared =
    [
        .06, .06, .08, .06, .06, .08, 2.4, .19, .11, .6, .3, .3, 1.0, .3, .35, 4, .25, .6, .4, 25,
    ];

    /// <summary>The hour of the last readings.</summary>
    public int Hour { get; protected set; }

    /// <summary>Readings of the next hour, NaN where none is taken.</summary>
    /// <param name="change">A real change of the plant since this hour on; null when there is none.</param>
    public abstract double[] Next(Func<Process, Process>? change = null);

    /// <summary>The same line from here on, with other luck.</summary>
    public abstract Plant Branch(int seed);
}
