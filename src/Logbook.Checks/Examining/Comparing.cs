using Logbook.Checks.CrossExamination;
using Logbook.Plant;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>From the ways to know a quantity to rows that compare them.</summary>
internal static class Comparing
{
    /// <summary>
    /// Each way beside the one that is read most often. Two ways that both lie wholly in the past said the same when they were
    /// read; they are not compared again.
    /// </summary>
    public static IEnumerable<Draft> Rows(string quantity, IReadOnlyList<Estimate> ways, IReadOnlyDictionary<string, Subject> subjects, Pace pace)
    {
        if (ways.Count < 2)
        {
            return [];
        }

        TimeSpan Every(Estimate way) => pace.Of(Current(way, subjects))?.Every ?? TimeSpan.Zero;
        var first = ways.MinBy(Every)!;
        return ways.Where(w => w != first && Units.CanConvert(w.Unit, first.Unit))
            .Select(other => new Draft(
                $"{quantity}: {first.Words} | {other.Words}", quantity.Replace('-', ' '), first.Unit, [first, other],
                gives => Units.Convert(gives[1], other.Unit, first.Unit) - gives[0],
                Prompting([first, other], subjects, pace)))
            .Where(d => d.Round is not null);
    }

    /// <returns>Null when one of its points cannot be followed.</returns>
    public static Draft? Balance(Balance balance, Func<string, Estimate?> point, Dictionary<string, Subject> subjects, Pace pace)
    {
        var ways = new List<Estimate>();
        var terms = new List<(double Factor, int[] Ways)>();
        foreach (var term in balance.Terms)
        {
            var places = new List<int>();
            foreach (var tag in term.Tags)
            {
                if (point(tag) is not { } way)
                {
                    return null;
                }

                places.Add(ways.Count);
                ways.Add(way);
            }

            terms.Add((term.Factor, [.. places]));
        }

        var prompts = Prompting(ways, subjects, pace);
        var one = Units.Find("1")!;
        var own = balance.U > 0 ? ways.Count : -1;
        if (own >= 0)
        {
            var key = $"balance {balance.Name}";
            subjects.TryAdd(key, new Subject(key, Role.Method, new Uncertainty(balance.U, false)) { Unit = one, Words = $"the balance '{balance.Name}' itself" });
            ways.Add(new Estimate("its own spread", one, [new Source(key, TimeSpan.Zero)], [], 0));
        }

        return prompts is null ? null : new Draft(
            $"balance: {balance.Name}", balance.Name, one, ways,
            gives => terms.Sum(t => t.Ways.Aggregate(t.Factor, (product, w) => product * gives[w])) - balance.EqualTo + (own >= 0 ? gives[own] : 0),
            prompts) { IsBalance = true };
    }

    /// <summary>The round with which a row speaks: that of the way that is new most seldom.</summary>
    private static string? Prompting(IReadOnlyList<Estimate> ways, IReadOnlyDictionary<string, Subject> subjects, Pace pace) =>
        ways.Select(w => pace.Of(Current(w, subjects))).Where(p => p is { Round: not null }).OrderByDescending(p => p!.Value.Every).FirstOrDefault()?.Round;

    /// <summary>Tags that are taken as they stand now.</summary>
    private static IEnumerable<string> Current(Estimate way, IReadOnlyDictionary<string, Subject> subjects) =>
        way.Sources.Where(s => s.Lag == TimeSpan.Zero && s.Required && subjects[s.Key].Role == Role.Reading).Select(s => s.Key);
}

/// <summary>A row whose sources have no place yet.</summary>
/// <param name="Round">The round with which it speaks.</param>
internal sealed record Draft(string Name, string Quantity, Unit Unit, IReadOnlyList<Estimate> Ways, Func<IReadOnlyList<double>, double> Combine, string? Round)
{
    public bool IsBalance { get; init; }

    public Row Placed(IReadOnlyDictionary<string, int> places, IReadOnlyDictionary<string, Subject> subjects, Pace pace)
    {
        var takes = Ways.SelectMany(w => w.Sources).GroupBy(s => (s.Key, s.Lag))
            .Select(g => g.First() with { Required = g.Any(s => s.Required) }).ToList();
        return new Row(
            Name, Quantity, Unit, Ways, Combine, [.. takes.Select(s => Input(s, places[s.Key], subjects[s.Key], pace))],
            [.. Ways.Select(w => w.Sources.Select(s => takes.FindIndex(t => t.Key == s.Key && t.Lag == s.Lag)).ToArray())]) { IsBalance = IsBalance };
    }

    private RowInput Input(Source source, int place, Subject subject, Pace pace)
    {
        if (subject.Point is not { } point)
        {
            return new RowInput(source, new ComparisonInput(place, Read: false), Prompts: false);
        }

        // What prompts the row must be of this entry; what is read in another round stands until it is read again.
        var prompts = source.Lag == TimeSpan.Zero && pace.RoundOf(point.Tag) == Round;
        return new RowInput(source, new ComparisonInput(place, Read: true, source.Lag.TotalHours, point.Stale.TotalHours) { Background = !prompts || !source.Required }, prompts);
    }
}
