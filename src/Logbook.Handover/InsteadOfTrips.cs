using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>While a trip is defeated, its point is read by hand as often as the item says: each such item is a round of its own.</summary>
public static class InsteadOfTrips
{
    // What was not read for so much longer than its check allows is told beside what can hurt. Judgement, no source.
    private static readonly TimeSpan Grace = TimeSpan.FromMinutes(15);

    /// <summary>The id of the round that an item brings: <c>instead-44</c>.</summary>
    public static string RoundId(long item) => "instead-" + item.ToString(CultureInfo.InvariantCulture);

    /// <summary>The title of a round of the site, or of one that an item brings; an unknown id as it is.</summary>
    public static string Title(Site site, string round) => site.FindRound(round)?.Title
        ?? (Is(round) ? $"Instead of the trip, item {round["instead-".Length..]}" : round);

    /// <summary>True when the round is read instead of a defeated trip.</summary>
    public static bool Is(string round) => round.StartsWith("instead-", StringComparison.Ordinal);

    /// <summary>What each open item has read by hand as a round of its own, the oldest item first.</summary>
    public static IReadOnlyList<Round> Rounds(Site site, IEnumerable<CarriedItem> carried) =>
    [
        .. from item in carried.OrderBy(i => i.Id)
           let check = Check(site, item.Fields)
           where check is not null
           select Round(site, item.Id, check.Value.Tag, check.Value.Every),
    ];

    /// <summary>Item to its checks that nobody made, or that were made or typed late.</summary>
    internal static IReadOnlyDictionary<long, IReadOnlyList<DueCheck>> NotOnTime(IEnumerable<DueCheck> checks) => checks
        .Where(c => Is(c.Round) && c.State is (CheckState.Missed or CheckState.Late)).GroupBy(c => long.Parse(c.Round["instead-".Length..], CultureInfo.InvariantCulture))
        .ToDictionary(g => g.Key, g => (IReadOnlyList<DueCheck>)[.. g.OrderBy(c => c.DueAt)]);

    // A miss just before a shift change is news to who comes. Judgement, no source.
    private static readonly TimeSpan Before = TimeSpan.FromHours(12);

    /// <summary>The same of a shift and of the half day before it: what was missed does not go at the change.</summary>
    internal static IReadOnlyDictionary<long, IReadOnlyList<DueCheck>> NotOnTime(Desk desk, State state, ShiftInstance shift, IReadOnlyList<DueCheck> checks) =>
        NotOnTime(Rounds(desk.Site, state.Carried).Count == 0 ? checks : DueList.Between(desk, shift.Start - Before, shift.Start).Concat(checks));

    /// <param name="then">The state at the stretch's end.</param>
    internal static IEnumerable<RoundSheet> Sheets(Desk desk, State then, IReadOnlyList<JournalRecord> records, DateTimeOffset begin, DateTimeOffset to)
    {
        var site = desk.Site;
        var closed = (from record in records
                     where record.Body is CarryClosed
                     let id = ((CarryClosed)record.Body).Id
                     from opened in desk.Store.Read(id).Take(1)
                     where opened.Seq == id && opened.Body is Carry
                     let item = (Carry)opened.Body
                     select (Id: id, item.Fields, Since: opened.At, End: record.At)).ToList();
        var open = then.Carried.ExceptBy(closed.Select(c => c.Id), i => i.Id).Select(i => (i.Id, i.Fields, i.Since, End: DateTimeOffset.MaxValue));
        return from item in closed.Concat(open)
               where item.Since < to && item.End >= begin
               let check = Check(site, item.Fields)
               where check is not null
               select Sheet(site, item.Id, check.Value.Tag, check.Value.Every, (item.Since, item.End), (begin, to));
    }

    /// <summary>What an item has read by hand, and how often; null when it names no check.</summary>
    private static (string Tag, TimeSpan Every)? Check(Site site, IReadOnlyDictionary<string, string> fields) =>
        fields.GetValueOrDefault("every") is { } every && fields.GetValueOrDefault("point") is { } tag
        && Typed.Duration(every, Place.Unknown, out _) is { } interval && site.FindPoint(tag) is not null ? (tag, interval) : null;

    /// <summary>As far as half way to the check before and after: whenever it is read, it counts for the nearest of them.</summary>
    private static TimeSpan Window(TimeSpan every) => every / 2;

    private static Round Round(Site site, long id, string tag, TimeSpan every) => new()
    {
        Id = RoundId(id), Title = Title(site, RoundId(id)), Schedule = new Schedule.Every(every), Early = Window(every), Late = Window(every), Points = [site.FindPoint(tag)!.Tag],
    };

    /// <summary>Since when its point was not read, once that is longer than the check allows; null while it is not. A shift change does not begin anew.</summary>
    internal static (TimeSpan For, TimeSpan Every)? NotRead(Site site, State state, CarriedItem item, DateTimeOffset now)
    {
        if (Check(site, item.Fields) is not var (tag, every))
        {
            return null;
        }

        var gap = now - LastRead(state, item, tag);
        return gap > every + (Window(every) < Grace ? Window(every) : Grace) ? (gap, every) : null;
    }

    private static DateTimeOffset LastRead(State state, CarriedItem item, string tag) =>
        state.Latest.GetValueOrDefault(tag) is { Value: not null } last && last.At > item.Since ? last.At : item.Since;

    /// <summary>The next check of each defeated trip that is open, in the order in which they fall due: one that can be made now, none that was made already.</summary>
    internal static IReadOnlyList<NextCheck> Next(Site site, State state, DateTimeOffset now) =>
    [
        .. (from item in state.Carried
            let check = Check(site, item.Fields)
            where check is not null
            let due = item.Since + (Math.Max(1, (long)Math.Ceiling((now - item.Since - Window(check.Value.Every)) / check.Value.Every)) * check.Value.Every)
            let next = LastRead(state, item, check.Value.Tag) > due - Window(check.Value.Every) ? due + check.Value.Every : due
            select new NextCheck(item, check.Value.Tag, check.Value.Every, next, next - Window(check.Value.Every), next + Window(check.Value.Every))).OrderBy(n => n.DueAt),
    ];

    /// <summary>The next check of each defeated trip that is open.</summary>
    public static IReadOnlyList<NextCheck> Next(Desk desk) => Next(desk.Site, desk.State, desk.Now);

    /// <summary>Due from the item's opening on, by the clock and not by the last reading, so that lateness does not creep.</summary>
    private static RoundSheet Sheet(
        Site site, long id, string tag, TimeSpan every, (DateTimeOffset Begin, DateTimeOffset End) open, (DateTimeOffset From, DateTimeOffset To) asked)
    {
        var round = Round(site, id, tag, every);
        var first = Math.Max(1, (long)Math.Floor((asked.From - open.Begin) / every));
        var slots = new List<Slot>();
        for (var due = open.Begin + (first * every); due < open.End && due < asked.To + every; due += every)
        {
            var at = Calendar.ToSite(site, due);
            slots.Add(new Slot(at, at - round.Early, at + round.Late, Calendar.ShiftAt(site, at)) { Points = round.Points });
        }

        return new RoundSheet(site, round, slots, asked.From, asked.To);
    }
}

/// <summary>When the point of a defeated trip is to be read by hand next.</summary>
public sealed record NextCheck(CarriedItem Item, string Point, TimeSpan Every, DateTimeOffset DueAt, DateTimeOffset Opens, DateTimeOffset Closes);
