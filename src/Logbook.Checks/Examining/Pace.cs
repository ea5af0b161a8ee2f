using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>How often each point is read, by the round that has it most often.</summary>
internal sealed class Pace(Site site)
{
    /// <summary>What is read at least so often must be new for a comparison to say something new; what is read more seldom stands until the next. The usual `stale`.</summary>
    private static readonly TimeSpan Often = TimeSpan.FromHours(4);

    private readonly Dictionary<string, (string Round, TimeSpan Every)> _byTag = Read(site);

    /// <summary>The round of a point.</summary>
    public string? RoundOf(string tag) => _byTag.TryGetValue(tag, out var pace) ? pace.Round : null;

    /// <summary>
    /// How often an estimate has something new to say: as often as the slowest of what is read often; when all is read seldom,
    /// as the fastest. Null when everything in it is of the past: that is always there.
    /// </summary>
    public (string? Round, TimeSpan Every)? Of(IEnumerable<string> current)
    {
        var paces = current.Select(t => _byTag.TryGetValue(t, out var pace) ? pace : (Round: null, Every: TimeSpan.MaxValue)).OrderBy(p => p.Every).ToList();
        return paces.Count == 0 ? null : paces.Exists(p => p.Every <= Often) ? paces.Last(p => p.Every <= Often) : paces[0];
    }

    private static Dictionary<string, (string Round, TimeSpan Every)> Read(Site site)
    {
        var byTag = new Dictionary<string, (string Round, TimeSpan Every)>(StringComparer.OrdinalIgnoreCase);
        foreach (var round in site.Rounds)
        {
            var every = Every(site, round.Schedule);
            foreach (var tag in round.Points.Where(t => !byTag.TryGetValue(t, out var known) || every < known.Every))
            {
                byTag[tag] = (round.Id, every);
            }
        }

        return byTag;
    }

    private static TimeSpan Every(Site site, Schedule schedule) => schedule switch
    {
        Schedule.Every every => every.Interval,
        Schedule.At at => TimeSpan.FromDays(1) / Math.Max(1, at.Times.Count),
        Schedule.Per { Period: "shift" } => TimeSpan.FromDays(1) / Math.Max(1, site.Shifts.Count),
        Schedule.Per { Period: "week" } => TimeSpan.FromDays(7),
        _ => TimeSpan.FromDays(1),
    };
}
