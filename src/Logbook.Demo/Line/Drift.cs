namespace Logbook.Demo.Line;

/// <summary>A slow wander around a mean: each step forgets a little and adds a little chance, so that its spread stays <paramref name="sd"/>.</summary>
/// <param name="mean">Where it returns to.</param>
/// <param name="sd">Its standard deviation.</param>
/// <param name="hours">How long it remembers.</param>
/// <param name="chance">Where its steps come from.</param>
internal sealed class Drift(double mean, double sd, double hours, Chance chance)
{
    private double _away = sd * chance.Normal();

    public double Value => mean + _away;

    public double Step(double dtHours)
    {
        var keep = Math.Exp(-dtHours / hours);
        _away = (_away * keep) + (sd * Math.Sqrt(1 - (keep * keep)) * chance.Normal());
        return Value;
    }
}
