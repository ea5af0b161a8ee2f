using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>While a trip is defeated, its point is read by hand as often as the item says: each such item is a round of its own.</summary>
public static class InsteadOfTrips
{
    private static readonly TimeSpan WidestWindow = TimeSpan.FromMinutes(15);

    /// <summary>The id of the round that an item brings: <c>instead-44</c>.</summary>
    public static string RoundId(long item) => "instead-" + item.ToString(CultureInfo.InvariantCulture);

    /// <summary>The title of a round of the site, or of one that an item brings; an unknown id as it is.</summary>
    public static string Title(Site site, string round) => site.FindRound(round)?.Title
        ?? (Is(round) ? $"Instead of the trip, item {round["instead-".Length..]}" : round);

    /// <summary>True when the round is read instead of a defeated trip.</summary>
    public static bool Is(string round) => round.StartsWith("instead-", StringComparison.Ordinal);

    /// <summary>Item to the times at which its check fell due and nobody made it.</summary>
    internal static IReadOnlyDictionary<long, IReadOnlyList<DateTimeOffset>> Missed(IEnumerable<(string Round, DateTimeOffset DueAt)> missed) => missed
        .Where(m => Is(m.Round)).Distinct().GroupBy(m => long.Parse(m.Round["instead-".Length..], CultureInfo.InvariantCulture))
        .ToDictionary(g => g.Key, g => (IReadOnlyList<DateTimeOffset>)[.. g.Select(m => m.DueAt).Order()]);

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
               let every = item.Fields.GetValueOrDefault("every")
               let tag = item.Fields.GetValueOrDefault("point")
               where every is not null && tag is not null
               let interval = Typed.Duration(every, Place.Unknown, out _)
               where interval is not null && site.FindPoint(tag) is not null
               select Sheet(site, item.Id, tag, interval.Value, (item.Since, item.End), (begin, to));
    }

    /// <summary>Due from the item's opening on, by the clock and not by the last reading, so that lateness does not creep.</summary>
    private static RoundSheet Sheet(
        Site site, long id, string tag, TimeSpan every, (DateTimeOffset Begin, DateTimeOffset End) open, (DateTimeOffset From, DateTimeOffset To) asked)
    {
        var window = every / 2 < WidestWindow ? every / 2 : WidestWindow;
        var round = new Round { Id = RoundId(id), Title = Title(site, RoundId(id)), Schedule = new Schedule.Every(every), Early = window, Late = window, Points = [tag] };
        var first = Math.Max(1, (long)Math.Floor((asked.From - open.Begin) / every));
        var slots = new List<Slot>();
        for (var due = open.Begin + (first * every); due < open.End && due < asked.To + every; due += every)
        {
            var at = Calendar.ToSite(site, due);
            slots.Add(new Slot(at, at - window, at + window, Calendar.ShiftAt(site, at)) { Points = round.Points });
        }

        return new RoundSheet(site, round, slots, asked.From, asked.To);
    }
}
