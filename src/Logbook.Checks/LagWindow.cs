namespace Logbook.Checks;

/// <summary>Of what a lagged input takes the mean: a quarter of the lag about its time.</summary>
public static class LagWindow
{
    /// <param name="at">The time of the entry.</param>
    /// <param name="lag">Longer than nothing.</param>
    public static (DateTimeOffset From, DateTimeOffset To) Of(DateTimeOffset at, TimeSpan lag) => (at - lag - (lag / 8), at - lag + (lag / 8));
}
