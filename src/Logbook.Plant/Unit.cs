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
    public override string ToString() => Name;
}
