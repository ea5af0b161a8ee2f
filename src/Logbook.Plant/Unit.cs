namespace Logbook.Plant;

/// <summary>
/// A unit with its basis. Two units convert when they have one <see cref="Dimension"/>: alkali as Na2O and as NaOH do
/// (by equivalents), a temperature and a temperature difference do not, gauge and absolute pressure do not.
/// </summary>
/// <param name="Name">As shown: <c>g/L Na2O</c>.</param>
/// <param name="Dimension">What it measures: <c>alkali</c>, <c>temperature</c>, <c>temperature-difference</c>.</param>
/// <param name="Factor">Value in the dimension's own unit = value * factor + offset.</param>
/// <param name="Offset">See <paramref name="Factor"/>.</param>
public sealed record Unit(string Name, string Dimension, double Factor, double Offset = 0)
{
    /// <summary><c>g/L as Na2O at 25 degC</c>; a plain ratio's is empty, any other unit is its name.</summary>
    /// <param name="litreAt">The temperature of the litre; null when it is not known.</param>
    public string InWords(string? litreAt) => Name.Equals("1", StringComparison.Ordinal) ? "" : !Dimension.Equals("alkali", StringComparison.Ordinal) ? Name
        : $"{Name[..Name.LastIndexOf(' ')]} as {Name[(Name.LastIndexOf(' ') + 1)..]}{(litreAt is null ? "" : " at " + litreAt)}";

    public override string ToString() => Name;
}
