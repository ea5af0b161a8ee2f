namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Where every row and reading stands now: what was last expected of it, carried from entry to entry. The same filter tells how
/// an error that stays looks to it: large at first, then taken up by the expectation.
/// </summary>
internal sealed class Standing(IReadOnlyList<Forecast> forecasts)
{
    private readonly double[] _deviation = new double[forecasts.Count];
    private readonly double[] _last = [.. Enumerable.Repeat(double.NaN, forecasts.Count)];

    public Standing Copy()
    {
        var copy = new Standing(forecasts);
        _deviation.CopyTo(copy._deviation, 0);
        _last.CopyTo(copy._last, 0);
        return copy;
    }

    /// <summary>The trace that an effect of this size leaves now, given what of it was taken up before.</summary>
    /// <param name="error">What of it is known for an error: this much is not taken up.</param>
    public double Take(int place, double effect, double hours, double error = 0)
    {
        if (effect == 0 && error == 0 && _deviation[place] == 0)
        {
            _last[place] = hours;
            return 0;
        }

        var forecast = forecasts[place];
        var expected = double.IsNaN(_last[place]) ? 0 : forecast.Faded(_deviation[place], hours - _last[place]);
        var surprise = effect - expected;
        (_deviation[place], _last[place]) = (expected + (forecast.Gain * (surprise - error)), hours);
        return surprise;
    }
}
