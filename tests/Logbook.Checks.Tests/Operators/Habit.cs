namespace Logbook.Operators;

internal enum Manner { Honest, Hurried, TypesUpLater, Copies, Invents, InventsWholeNights }

/// <summary>How one crew's operator fills in a walk. What is honest is honest throughout; what is not happens on nights.</summary>
internal sealed class Habit(Manner manner, int seed)
{
    private readonly Random _random = new(seed);
    private double?[]? _last;

    public double?[] Fill(SimulatedLine line, bool night, IReadOnlyList<double?[]> before)
    {
        var values = manner switch
        {
            Manner.Copies when night && before.Count > 0 && !line.Stopped && _random.NextDouble() < 0.3 => Copy(line, before),
            Manner.Invents when night && _last is not null && !line.Stopped && _random.NextDouble() < 0.5 => Invent(line, _last),
            Manner.InventsWholeNights when night && _last is not null && !line.Stopped => Invent(line, _last),
            Manner.Hurried => [.. Read(line).Select((v, p) => _random.NextDouble() < 0.2 ? null : v is { } value ? Coarse(line, p, value) : v)],
            // Typed up from a sheet: true values, some rounded on the way, none made up.
            Manner.TypesUpLater => [.. Read(line).Select((v, p) => v is { } value && _random.NextDouble() < 0.3 ? Coarse(line, p, value) : v)],
            _ => Read(line),
        };
        _last = values.Any(v => v is not null) ? values : _last;
        return values;
    }

    private double?[] Read(SimulatedLine line) =>
        [.. Enumerable.Range(0, SimulatedLine.Points).Select(p => _random.NextDouble() < 0.01 ? null : line.Shown(p))];

    /// <summary>One of the last six sheets once more, one reading in seven nudged.</summary>
    private double?[] Copy(SimulatedLine line, IReadOnlyList<double?[]> before) =>
        [.. before[^Math.Min(before.Count, 1 + _random.Next(6))].Select((v, p) => v is { } value && _random.Next(7) == 0
            ? line.OnDisplay(p, value + (_random.Next(2) == 0 ? 1 : -1) * line.Step(p)) : v)];

    /// <summary>Near the last value, a little up or down: people make numbers that move too little.</summary>
    private double?[] Invent(SimulatedLine line, double?[] last) =>
        [.. last.Select((v, p) => v is { } value ? line.OnDisplay(p, value + (0.25 * line.Usual(p) * ((2 * _random.NextDouble()) - 1))) : v)];

    private static double Coarse(SimulatedLine line, int point, double value) =>
        Math.Round(value / (2 * line.Step(point))) * 2 * line.Step(point);
}
