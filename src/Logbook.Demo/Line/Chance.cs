namespace Logbook.Demo.Line;

/// <summary>Everything that chance decides comes from here, so that one seed gives one history.</summary>
internal sealed class Chance(int seed)
{
    private readonly Random _random = new(seed);

    /// <summary>Mean 0, standard deviation 1, by Box and Muller.</summary>
    public double Normal() =>
        Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>Evenly between two numbers.</summary>
    public double Between(double low, double high) => low + ((high - low) * _random.NextDouble());

    public bool OneIn(double n) => _random.NextDouble() * n < 1;

    public T Pick<T>(IReadOnlyList<T> from) => from[_random.Next(from.Count)];
}
