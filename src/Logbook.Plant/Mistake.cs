namespace Logbook.Plant;

/// <summary>Where in a file something stands; line and column from 1, 0 when there is none.</summary>
public sealed record Place(string File, int Line, int Column)
{
    public static readonly Place Unknown = new("", 0, 0);
}

/// <summary>Something a person gave that cannot be used: one clear line.</summary>
/// <param name="Where">Where it stands, or <see cref="Place.Unknown"/> when it was typed.</param>
/// <param name="Wrong">What is wrong.</param>
/// <param name="Accepted">What is accepted; empty when that is obvious.</param>
public sealed record Mistake(Place Where, string Wrong, string Accepted = "")
{
    public static Mistake Typed(string wrong, string accepted = "") => new(Place.Unknown, wrong, accepted);

    public override string ToString()
    {
        var place = Where.File.Length == 0 ? "" : Where.Line == 0 ? $"{Where.File}: " : $"{Where.File}:{Where.Line}:{Where.Column}: ";
        return Accepted.Length == 0 ? place + Wrong : $"{place}{Wrong}; {Accepted}";
    }
}

/// <summary>A value, or the mistakes that prevented it. Bad input is data; only programmers' mistakes throw.</summary>
public sealed record Parsed<T>(T? Value, IReadOnlyList<Mistake> Mistakes)
    where T : class
{
    public bool Ok => Mistakes.Count == 0 && Value is not null;
}
