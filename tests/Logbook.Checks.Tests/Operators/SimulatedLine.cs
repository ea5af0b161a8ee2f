namespace Logbook.Operators;

/// <summary>
/// A line that four crews read hourly for a number of days, to measure detectors on. It knows nothing of how they work:
/// slow processes that share a common load, instruments with noise and a display step, calm and restless days, a stop, now
/// and then a stuck gauge.
/// </summary>
internal sealed class SimulatedLine
{
    public const int Points = 14;

    private readonly Random _random;
    private readonly double[] _sd = new double[Points];
    private readonly double[] _level = new double[Points];
    private readonly double[] _slow = new double[Points];
    private readonly double[] _noise = new double[Points];
    private double _load;
    private double _restless = 1;
    private int _stopped;
    private int _stuck = -1;
    private int _stuckFor;
    private double _stuckAt;

    public SimulatedLine(int seed)
    {
        _random = new Random(seed);
        for (var p = 0; p < Points; p++)
        {
            _level[p] = 20 + (80 * _random.NextDouble());
            _sd[p] = 0.4 + _random.NextDouble();
            _noise[p] = _sd[p] * (0.2 + (0.5 * _random.NextDouble()));
            // From displays that are fine against what they show to coarse ones that often repeat.
            Resolutions[p] = _sd[p] * new[] { 0.05, 0.1, 0.2, 0.5, 1.0 }[_random.Next(5)];
        }
    }

    public double[] Resolutions { get; } = new double[Points];

    public double Step(int point) => Resolutions[point];

    public double Usual(int point) => _sd[point];

    public bool Stopped => _stopped > 0;

    /// <summary>An hour goes by.</summary>
    public void Hour()
    {
        _load = (0.93 * _load) + (0.37 * Normal());
        if (_random.Next(18) == 0)
        {
            _restless = 0.6 + (0.9 * _random.NextDouble());
        }

        _stopped = _stopped > 0 ? _stopped - 1 : _random.Next(600) == 0 ? 5 + _random.Next(15) : 0;
        for (var p = 0; p < Points; p++)
        {
            _slow[p] = (0.85 * _slow[p]) + (0.53 * _sd[p] * _restless * Normal());
        }

        Gauge();
    }

    private void Gauge()
    {
        if (_stuckFor > 0)
        {
            _stuckFor--;
        }
        else if (_random.Next(2000) == 0)
        {
            (_stuck, _stuckFor) = (_random.Next(Points), 12 + _random.Next(48));
            _stuckAt = Truth(_stuck);
        }
        else
        {
            _stuck = -1;
        }
    }

    /// <summary>What the instrument shows now; null while the equipment stands still.</summary>
    public double? Shown(int point) => Stopped ? null
        : OnDisplay(point, point == _stuck ? _stuckAt : Truth(point) + (_noise[point] * _restless * Normal()));

    public double OnDisplay(int point, double value) => Math.Round(value / Resolutions[point]) * Resolutions[point];

    private double Truth(int point) => _level[point] + (0.4 * _sd[point] * _load) + _slow[point];

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
