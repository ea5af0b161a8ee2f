using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The handover note before it has a format: sections in their order, each line with its words.</summary>
public sealed record HandoverNote
{
    public required string Site { get; init; }

    public required string ShiftId { get; init; }

    /// <summary>The shift in words: code, start, end, crew.</summary>
    public required string Period { get; init; }

    /// <summary>Up to when the note tells: now, or the shift's end when that has passed.</summary>
    public required string DrawnAt { get; init; }

    /// <summary>Reasons to take longer, in words; empty on a normal shift.</summary>
    public required IReadOnlyList<string> TakeLonger { get; init; }

    public required IReadOnlyList<NoteSection> Sections { get; init; }

    /// <summary>At most three, chosen by what is open or out of limits.</summary>
    public required IReadOnlyList<NoteCaution> Cautions { get; init; }

    /// <summary>Points worth a trend: their series over the shift.</summary>
    public required IReadOnlyList<NoteTrend> Trends { get; init; }

    /// <summary>Who gave, and who holds the line, in words; empty before anything is signed.</summary>
    public string Gave { get; init; } = "";

    public string Holds { get; init; } = "";

    /// <summary>Own words of both, what was asked, and reservations: the label says whose.</summary>
    public IReadOnlyList<NoteLine> OwnWords { get; init; } = [];

    /// <summary>Every signature of this handover with its meaning; empty on a draft.</summary>
    public IReadOnlyList<string> Signatures { get; init; } = [];

    public required long Records { get; init; }

    public required string Head { get; init; }

    /// <summary>
    /// The note of the shift that covers <paramref name="at"/>. Once it was taken over it stands as it was accepted, and what
    /// came later stands below; before that it shows what the journal knows, for a shift that is over what was open at its end.
    /// </summary>
    public static HandoverNote Of(Desk desk, DateTimeOffset at)
    {
        var shift = Calendar.ShiftAt(SiteInForce.At(desk, at), at);
        return AcceptedNote.Find(desk, shift) is { } accepted ? AcceptedNote.Of(desk, shift, accepted)
            : ShiftInHand.Of(desk).Id == shift.Id ? InHand(desk)
            : Drawn(ShiftFacts.Of(desk, at));
    }

    /// <summary>
    /// The note as it was accepted by record <paramref name="seq"/>, or by the last acceptance, and when its shift began; null
    /// when there is none. A shift that was handed over in its middle has more than one.
    /// </summary>
    public static (HandoverNote Note, DateTimeOffset Began)? Accepted(Desk desk, long? seq) =>
        AcceptedNote.Find(desk, seq) is { } record && AcceptedNote.ShiftOf(desk, record) is var shift ? (AcceptedNote.Of(desk, shift, record), shift.Start) : null;

    /// <summary>The note that is being handed over, as it stands now.</summary>
    public static HandoverNote InHand(Desk desk) => InHand(desk, Declaration.Of(desk));

    /// <param name="declared">What is about to be signed, or was.</param>
    internal static HandoverNote InHand(Desk desk, Declaration? declared)
    {
        var facts = ShiftFacts.InHand(desk) with { Declared = declared };
        var note = Drawn(facts);
        return note with { Sections = [.. note.Sections, .. SincePrepared.Section(desk)] };
    }

    private static HandoverNote Drawn(ShiftFacts facts)
    {
        var (desk, site, shift) = (facts.Desk, facts.Site, facts.Shift);
        var signed = HandoverWords.Of(desk, shift);
        return new HandoverNote
        {
            Site = Say.Visible(site.Name),
            ShiftId = shift.Id,
            Period = $"Shift {shift.Code}, crew {Say.Visible(shift.Crew)}, {Say.Day(site, shift.Start)} to {Say.Day(site, shift.End)}",
            DrawnAt = Say.Day(site, facts.AsOf) + (facts.AsOf < shift.End ? ", the shift still running" : ", the shift's end; entries typed later are in it"),
            TakeLonger = Handover.TakeLonger.Of(desk, site, facts.State, facts.AsOf, shift.Start),
            Sections =
            [
                CanHurt.Of(facts), NotNormal.Of(facts), Moving.Of(facts), NotDone.Of(facts), StocksHeld.Of(facts),
                StillOpen.Of(facts), ComingNext.Of(facts), StandingOrders.Of(facts), Remarks.Of(facts),
            ],
            Cautions = ChosenCautions.Of(site, facts.State),
            Trends = Trending.Of(facts),
            Records = desk.State.Head.Seq,
            Head = desk.State.Head.Hash,
            Gave = signed.Gave,
            Holds = signed.Holds,
            OwnWords = signed.OwnWords,
            Signatures = signed.Signatures,
        };
    }
}

/// <param name="Id">can-hurt, not-normal, moving, not-done, stocks, still-open, coming, orders, remarks.</param>
/// <param name="Title">As printed: <c>CAN HURT</c>.</param>
public sealed record NoteSection(string Id, string Title, IReadOnlyList<NoteLine> Lines)
{
    /// <summary>What limits the whole section, printed beside its title; empty when nothing does.</summary>
    public string Beside { get; init; } = "";

    /// <summary>A section never stays blank: without lines it says that nothing is recorded.</summary>
    internal static NoteSection Of(string id, string title, IEnumerable<NoteLine> lines)
    {
        var all = lines.ToList();
        return new NoteSection(id, title, all.Count > 0 ? all : [new NoteLine("", "nothing recorded")]);
    }
}

/// <param name="Label">What it is about, a word or two: <c>slaker</c>.</param>
public sealed record NoteLine(string Label, string Text);

public sealed record NoteCaution(string Hazard, string Text, string Ppe, string FirstAid, string Source, string Revision, bool Draft);

public sealed record NoteTrend(string Point, string Title, string Unit, IReadOnlyList<(DateTimeOffset At, double Value)> Values, double? WatchLow, double? WatchHigh, double? UrgentLow, double? UrgentHigh);
