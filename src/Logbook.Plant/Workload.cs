namespace Logbook.Plant;

/// <summary>How much of a shift its rounds take.</summary>
public static class Workload
{
    /// <summary>More than a quarter of a shift leaves too little for the line itself. Judgement, no source.</summary>
    public const double Most = 0.25;

    /// <summary>Minutes of rounds in an ordinary shift, on average.</summary>
    public static double MinutesPerShift(Site site) => site.Rounds.Sum(r => r.Takes.TotalMinutes * TimesPerShift(site, r.Schedule));

    /// <summary>The share of an ordinary shift that its rounds take, from 0.</summary>
    public static double Share(Site site) => MinutesPerShift(site) * site.Shifts.Count / (24 * 60);

    private static double TimesPerShift(Site site, Schedule schedule) => schedule switch
    {
        Schedule.Every every => Lengths(site).Average(length => Math.Ceiling(length / every.Interval)),
        Schedule.At at => (double)at.Times.Count / site.Shifts.Count,
        Schedule.Per { Period: "shift" } => 1,
        Schedule.Per { Period: "week" } => 1.0 / (7 * site.Shifts.Count),
        _ => 1.0 / site.Shifts.Count,
    };

    private static IEnumerable<TimeSpan> Lengths(Site site)
    {
        var starts = site.Shifts.Select(s => s.Starts.ToTimeSpan()).Order().ToList();
        return starts.Zip(starts.Skip(1).Append(starts[0] + TimeSpan.FromDays(1)), (start, end) => end - start);
    }
}
