using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>One page of the handover as a receiver reads it.</summary>
/// <param name="Name">hazards, moving, changed, or the number of a record.</param>
public sealed record HandoverPage(string Name, string Title, IReadOnlyList<NoteSection> Sections);

/// <summary>The pages of the handover in hand. One that was shown in full counts as seen, and a record says so.</summary>
public static class HandoverPages
{
    /// <summary>Draws a page and says up to which record it can tell. That it was shown in full is said by <see cref="Saw"/>.</summary>
    public static (HandoverPage? Page, long UpTo) Draw(Desk desk, string by, string name)
    {
        desk.Follow();
        _ = Draw(desk, by, name, out var page);
        return (page, desk.State.Head.Seq);
    }

    /// <summary>Records that a page was shown in full.</summary>
    public static Handed Saw(Desk desk, string by, string page, long upTo) => Handed.Step(desk, by, () => [], () => null, () => new HandoverSeen(page, upTo));

    /// <summary>Draws a page and records that it was shown; the caller shows it.</summary>
    public static (HandoverPage? Page, Handed Seen) Open(Desk desk, string by, string name)
    {
        desk.Follow();
        var upTo = desk.State.Head.Seq;
        HandoverPage? page = null;
        var seen = Handed.Step(
            desk, by,
            () => Draw(desk, by, name, out page),
            () => null,
            () => new HandoverSeen(page!.Name, upTo));
        return (seen.Record is null ? null : page, seen);
    }

    /// <summary>What this person has still to see before taking over: pages by name, records of others by number. Empty when all is seen.</summary>
    public static IReadOnlyList<string> Missing(Desk desk, string by)
    {
        var line = desk.State.Line;
        var prepared = line.Prepared?.Seq ?? 0;
        var own = line.Seen.FindAll(s => Handed.Same(s.By, by) && s.Seq > prepared);
        var pages = LineHeld.Pages.Where(p => !own.Exists(s => s.Page == p)).ToList();
        return own.Find(s => s.Page == "hazards") is not { } hazards
            ? pages
            : [.. pages, .. SincePrepared.Hurting(desk, hazards.UpTo).Where(r => !Handed.Same(r.By, by)).Select(r => Number(r.Seq)).Where(n => !own.Exists(s => s.Page == n))];
    }

    private static List<Plant.Mistake> Draw(Desk desk, string by, string name, out HandoverPage? page)
    {
        page = name switch
        {
            "hazards" or "moving" or "changed" => Page(desk, by, name),
            _ when long.TryParse(name.TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var seq) && seq >= 1 => Item(desk, seq),
            _ => null,
        };
        return page is null ? [Plant.Mistake.Typed($"'{name}' is no page of the handover", "hazards, moving, changed, or the number of a record")] : [];
    }

    private static HandoverPage Page(Desk desk, string by, string name)
    {
        var facts = ShiftFacts.InHand(desk) with { Declared = Declaration.Of(desk) };
        return name switch
        {
            "hazards" => new(name, "what can hurt, and what is not normal",
            [
                .. Longer(desk, by), CanHurt.OnPage(facts), NotNormal.OnPage(facts),
                .. SincePrepared.Lines(desk, hurting: true).ToList() is { Count: > 0 } hurting ? [SincePrepared.Section(desk, "since-hurts", "SINCE PREPARED, CAN HURT", hurting)] : Array.Empty<NoteSection>(),
            ]),
            "moving" => new(name, "what moves, what was not done, what the tanks hold", [Moving.Of(facts), NotDone.Of(facts), StocksHeld.Of(facts)]),
            _ => new(name, "what changed since you were last here, what comes",
            [
                Since.Section(desk, by),
                .. SincePrepared.Lines(desk, hurting: false).ToList() is { Count: > 0 } since ? [SincePrepared.Section(desk, "since-prepared", "SINCE PREPARED", since)] : Array.Empty<NoteSection>(),
                StillOpen.Of(facts), ComingNext.Of(facts), StandingOrders.Of(facts, by), Remarks.Of(facts),
            ]),
        };
    }

    private static IEnumerable<NoteSection> Longer(Desk desk, string by)
    {
        var reasons = string.Join("; ", TakeLonger.Of(desk, desk.Site, desk.State, desk.Now).Concat(TakeLonger.Away(desk, by)));
        return reasons.Length == 0 ? [] : [new NoteSection("take-longer", "TAKE LONGER", [new NoteLine("", reasons)])];
    }

    private static HandoverPage? Item(Desk desk, long seq)
    {
        if (desk.Store.Read(seq).FirstOrDefault() is not { } record || record.Seq != seq)
        {
            return null;
        }

        var line = LogLine.Of(desk, record);
        var hazards = Hazards.Of(desk.Site, desk.State, desk.Now).Where(h => h.Seq == seq).Select(h => new NoteLine(h.Word, h.Text));
        NoteLine said = new(Say.Time(desk.Site, line.At, desk.Now), $"{line.Words}. {Say.Person(desk.Site, line.By)} {Say.Ref(seq)}");
        return new(Number(seq), $"record {Number(seq)}", [new NoteSection("item", "ONE RECORD", [.. hazards, said])]);
    }

    private static string Number(long seq) => seq.ToString(CultureInfo.InvariantCulture);
}
