using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>One thing that changed.</summary>
/// <param name="On">Code of the equipment or area, or a point's tag; empty for the line.</param>
/// <param name="What">state, opened, changed, closed, order, site, upset, urgent, watch or department.</param>
public sealed record Change(string On, string What, DateTimeOffset At, string By, string Text, long Seq)
{
    /// <summary>Of an urgent or watched one what was found at its worst; null for any other.</summary>
    internal Finding? Finding { get; init; }

    /// <summary>True when the finding stands.</summary>
    internal bool Stands { get; init; }

    /// <summary>What stands of it though it is not as bad any more; null when nothing does.</summary>
    internal Finding? Lesser { get; init; }
}

/// <summary>What changed since a person was last here, by equipment.</summary>
/// <param name="LastHere">When the person last wrote something before this time here; null when never.</param>
public sealed record Since(DateTimeOffset? LastHere, IReadOnlyList<Change> Changes)
{
    // Somebody who was never here is told of this long. Judgement, no source.
    private static readonly TimeSpan ForNewcomers = TimeSpan.FromDays(14);

    public static Since Of(Desk desk, string person)
    {
        var last = LastTime(desk, person);
        var from = last?.At ?? desk.Now - ForNewcomers;
        var records = JournalSpan.Touching(desk, from, desk.Now).Where(r => r.Seq > (last?.Seq ?? 0) && r.Entered >= from && r.Seq <= desk.State.Head.Seq).ToList();
        return new Since(last?.At, [.. records.SelectMany(r => Told(desk, r)).Concat(Findings(desk, records)).OrderBy(c => c.On, StringComparer.OrdinalIgnoreCase).ThenBy(c => c.Seq)]);
    }

    /// <summary>The person's last record before this time here: being here now does not hide having been away.</summary>
    public static Moment? LastTime(Desk desk, string person)
    {
        var standing = desk.State.People.GetValueOrDefault(person);
        var here = standing?.Last is { } last && desk.Now - last.At <= Standing.Away;
        return here ? standing!.Before : standing?.Last;
    }

    /// <summary>The changes as a section of a page: worst first, what is the same kind together.</summary>
    internal static NoteSection Section(Desk desk, string person)
    {
        var since = Of(desk, person);
        return NoteSection.Of("since-here", "SINCE YOU WERE HERE", SinceInShort.Lines(desk, since.Changes)) with
        {
            Beside = since.LastHere is { } at ? $"last here {Say.Day(desk.Site, at)}" : "nothing recorded of an earlier time; the last fourteen days",
        };
    }

    private static IEnumerable<Change> Told(Desk desk, JournalRecord record)
    {
        (string What, string On)? told = record.Body switch
        {
            EquipmentStateChanged change => ("state", change.Equipment),
            Carry item => ("opened", item.On),
            CarryConfirmed look when look.Changed is not null || look.Owner is not null => ("changed", Place(desk, look.Id)),
            CarryClosed closed => ("closed", Place(desk, closed.Id)),
            OrderGiven or OrderWithdrawn => ("order", ""),
            SiteAdopted => ("site", ""),
            UpsetDeclared => ("upset", ""),
            DepartmentNote { Acknowledges: null } => ("department", ""),
            _ => null,
        };
        return told is { } t ? [new Change(t.On, t.What, record.At, record.By, LogLine.Of(desk, record).Words, record.Seq)] : [];
    }

    private static string Place(Desk desk, long item) =>
        desk.State.Carried.Find(c => c.Id == item)?.On
        ?? (desk.Store.Read(item).FirstOrDefault() is { Body: Carry carry } record && record.Seq == item ? carry.On : "");

    /// <summary>Findings folded by point and kind: the worst, how often, and whether it stands.</summary>
    private static IEnumerable<Change> Findings(Desk desk, List<JournalRecord> records)
    {
        var site = desk.Site;
        return from found in Corrected.Entries(records).SelectMany(e => e.Entry.Findings.Select(f => (e.Record, Finding: f)))
            where found.Finding.Level >= Level.Watch
            group found by (found.Finding.Point, Family: Family(found.Finding)) into kind
            let worst = kind.OrderByDescending(f => f.Finding.Level).ThenByDescending(f => f.Record.Seq).First()
            let open = (desk.State.Findings.GetValueOrDefault(kind.Key.Point ?? "") ?? []).Select(f => f.Finding).Where(f => Family(f) == kind.Key.Family).MaxBy(f => f.Level)
            let stands = kind.Key.Point is null || open?.Level >= worst.Finding.Level
            let lesser = stands || open?.Level < Level.Watch ? null : open
            // What it asked for at the time would mislead once it is over.
            let text = stands ? worst.Finding.Text : FindingText.WithoutAsking(site, worst.Finding) + (lesser is null ? "; over since" : $"; now {FindingText.AtLeast(site, lesser)}")
            let often = kind.Count() == 1 ? "" : $" ({kind.Count()} times from {Say.Day(site, kind.Min(f => f.Record.At))} on)"
            select new Change(
                (kind.Key.Point is { } tag ? site.FindPoint(tag)?.Equipment ?? site.FindPoint(tag)?.Area : null) ?? "",
                worst.Finding.Level.ToString().ToLowerInvariant(), worst.Record.At, worst.Record.By,
                $"{(kind.Key.Point is { } point ? Say.Visible(point) + ": " : "")}{Say.Visible(text)}{often}", worst.Record.Seq) { Finding = worst.Finding, Stands = stands, Lesser = lesser };
    }

    private static string Family(Finding finding) => finding.Code.Split('.')[0];
}
