using System.Runtime.InteropServices;

namespace Logbook.Checks.CrossExamination;

/// <summary>The recent past of every reading: what a comparison takes its inputs from.</summary>
internal sealed class Pasts
{
    private const double Kept = 48;

    private readonly Dictionary<int, List<(double Hours, double Value)>> _series = [];

    public Pasts Copy()
    {
        var copy = new Pasts();
        foreach (var (reading, series) in _series)
        {
            copy._series[reading] = [.. series];
        }

        return copy;
    }

    /// <summary>Takes up a reading; what is no number is not kept.</summary>
    public void Add(int reading, double hours, double value)
    {
        if (!double.IsFinite(value))
        {
            return;
        }

        if (!_series.TryGetValue(reading, out var series))
        {
            _series[reading] = series = [];
        }

        series.Add((hours, value));
        series.RemoveRange(0, series.TakeWhile(s => s.Hours < hours - Kept).Count());
    }

    /// <summary>
    /// The input as it was at its lag: between the readings before and after that time in proportion, or the last before it.
    /// Empty when there is none within its age.
    /// </summary>
    public IReadOnlyList<Past> At(ComparisonInput input, double hours)
    {
        var at = hours - input.Lag;
        if (!_series.TryGetValue(input.Parameter, out var series) || series.FindLastIndex(s => s.Hours <= at) is var last && last < 0 || series[last].Hours < at - input.Stale)
        {
            return [];
        }

        var before = series[last];
        if (before.Hours >= at || last + 1 == series.Count || series[last + 1].Hours > at + input.Stale)
        {
            return [new Past(before.Value, 1, hours - before.Hours)];
        }

        var after = series[last + 1];
        var share = (at - before.Hours) / (after.Hours - before.Hours);
        return [new Past(before.Value, 1 - share, hours - before.Hours), new Past(after.Value, share, hours - after.Hours)];
    }
}

/// <summary>A reading that goes into an input, with its weight and how many hours before the entry it was taken.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Past(double Value, double Weight, double Back);
