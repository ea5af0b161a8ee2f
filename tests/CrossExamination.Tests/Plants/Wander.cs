namespace CrossExamination.Tests.Plants;

/// <summary>A value that wanders about its middle and comes back.</summary>
internal sealed class Wander(Dice dice, double spread, double memory)
{
    private double _at = dice.Normal() * spread;

    public double Next() => _at = (memory * _at) + (Math.Sqrt(1 - (memory * memory)) * spread * dice.Normal());

    public Wander With(Dice other) => new(other, spread, memory) { _at = _at };
}

/// <summary>Random numbers that a seed repeats.</summary>
internal sealed class Dice(int seed)
{
    private readonly Random _random = new(seed);

    public double Uniform() => _random.NextDouble();

    public int Sign() => _random.Next(2) == 0 ? -1 : 1;

    public int Next(int below) => _random.Next(below);

    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    /// <summary>Student's t with six degrees of freedom, brought to a standard deviation of one.</summary>
    public double Heavy()
    {
        var square = Enumerable.Range(0, 6).Sum(_ => Math.Pow(Normal(), 2));
        return Normal() / Math.Sqrt(square / 6) / Math.Sqrt(1.5);
    }
}
