using System.Globalization;
using Logbook.Demo.Line;
using Logbook.Plant;

namespace Logbook.Demo.Instruments;

/// <summary>One point's own character over the whole history.</summary>
/// <param name="bias">Its calibration error, in halves of its standard uncertainty.</param>
/// <param name="drift">Its wandering, when no balance gives its value.</param>
internal sealed class Instrument(double bias, Drift? drift)
{
    private DateTimeOffset? _last;
    private int _answer = 1;

    public double Bias => bias;

    /// <summary>What it shows while it is stuck.</summary>
    public string? StuckAt { get; set; }

    /// <summary>The wandering value at a time that is not before the last one asked for.</summary>
    public double Wander(DateTimeOffset at)
    {
        if (drift is null)
        {
            throw new InvalidOperationException("the simulator does not know this point");
        }

        var hours = Math.Max(0, (at - (_last ?? at)).TotalHours);
        _last = at;
        return hours > 0 ? drift.Step(hours) : drift.Value;
    }

    /// <summary>A look-and-listen point: mostly good; now and then something mild, that lasts until it has been seen to.</summary>
    public string Look(Point point, Chance chance)
    {
        var mild = point.Choices.FirstOrDefault(c => c.Level is "note");
        _answer = _answer == 1
            ? mild is not null && chance.OneIn(250) ? mild.Digit : 1
            : chance.OneIn(2) ? 1 : _answer;
        return _answer.ToString(CultureInfo.InvariantCulture);
    }
}
