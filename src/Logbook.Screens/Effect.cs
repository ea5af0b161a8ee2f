using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Something to be done outside the state: data, run by <see cref="Runner"/>.</summary>
internal abstract record Effect
{
    /// <summary>It may take longer than a person waits for a key: it is run beside the keys, and what comes of it is dropped when nobody waits for it any more.</summary>
    public virtual bool IsSlow => false;
}

/// <summary>Looks whether any terminal has written, and tells what is known now.</summary>
internal sealed record Follow : Effect;

/// <summary>Judges and saves.</summary>
internal sealed record SaveEntry(EntryRequest Request) : Effect;

/// <summary>Appends one line to this terminal's draft and forces it to the disk.</summary>
internal sealed record KeepDraft(DraftLine Line) : Effect;

/// <summary>The draft is in the journal: its file may go.</summary>
internal sealed record DropDraft : Effect;

/// <summary>Goes on with a draft that was left behind: its file is this terminal's from now on.</summary>
internal sealed record TakeUpDraft(string File) : Effect;

/// <summary>Finds what a round has already.</summary>
/// <param name="Slot">The slot that is open; null when none is.</param>
/// <param name="Second">What of it is taken a second time; null for the round itself.</param>
internal sealed record OpenRound(Round Round, RoundNow? Slot, SecondReading? Second = null) : Effect;

/// <summary>Finds the newest values of a point.</summary>
internal sealed record LookBack(string Point) : Effect;

/// <summary>Reads records below a sequence number, newest first.</summary>
/// <param name="Later">While looking for what a filter shows: the screen is drawn between two portions.</param>
internal sealed record ReadOlder(long Below, int Count, bool Later) : Effect
{
    public override bool IsSlow => Later;
}

/// <summary>Finds every record that belongs to one.</summary>
internal sealed record ReadRelated(long Seq) : Effect
{
    public override bool IsSlow => true;
}

/// <summary>Reads the records after a sequence number.</summary>
internal sealed record ReadNewer(long After) : Effect;

/// <summary>Reads points over a stretch of time.</summary>
internal sealed record ReadSeries(IReadOnlyList<string> Points, DateTimeOffset From, DateTimeOffset To) : Effect;

/// <summary>Reads the audit's flags of a stretch of time.</summary>
internal sealed record ReadAudit(DateTimeOffset From, DateTimeOffset To) : Effect
{
    public override bool IsSlow => true;
}

/// <summary>Reads one record.</summary>
internal sealed record ReadRecord(long Seq) : Effect;

/// <summary>Finds what could hurt in this shift and is over.</summary>
internal sealed record ReadOver : Effect;

/// <summary>Finds what this person has still to read of the handover.</summary>
internal sealed record ReadOn(string By) : Effect;

/// <summary>Draws a page of the handover.</summary>
internal sealed record ShowPage(string By, string Page) : Effect;

/// <summary>A question about what can hurt was answered otherwise than the page, which is read anew.</summary>
internal sealed record MissQuestion(string By, HazardQuestion Question) : Effect;

/// <summary>The page was shown in full.</summary>
internal sealed record SeePage(string By, string Page, long UpTo) : Effect;

/// <summary>Writes a record beside entries and handovers.</summary>
internal sealed record WriteIt(ToWrite What) : Effect;

/// <summary>Takes a step of the handover.</summary>
/// <param name="Pin">What was typed; empty when the step asks for none.</param>
/// <param name="Witness">Whose PIN it is, when the signer has forgotten the own one.</param>
internal sealed record Hand(HandStep Step, Secret Pin, string? Witness) : Effect;

/// <summary>Goes on with the next message when everything before it has been answered.</summary>
internal sealed record GoOn(Message Message) : Effect;
