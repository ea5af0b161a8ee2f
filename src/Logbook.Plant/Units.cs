namespace Logbook.Plant;

/// <summary>Every unit that the program knows.</summary>
public static class Units
{
    public static IReadOnlyList<Unit> All { get; } = [];

    /// <summary>The unit with this name or spelling (<c>°C</c>, <c>m³/h</c>), or null.</summary>
    public static Unit? Find(string name) => throw new NotImplementedException();

    /// <summary>True when a value in one can be given in the other.</summary>
    public static bool CanConvert(Unit from, Unit to) => string.Equals(from.Dimension, to.Dimension, StringComparison.Ordinal);

    /// <summary>The value in another unit of the same dimension.</summary>
    /// <exception cref="ArgumentException">The units have different dimensions.</exception>
    public static double Convert(double value, Unit from, Unit to) => throw new NotImplementedException();
}
