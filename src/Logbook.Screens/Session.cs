using System.Collections.Immutable;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What is known of the line.</summary>
/// <param name="Line">Who holds it, and how far its handover has come.</param>
internal sealed record Facts(Site Site, NowView Now, Head Head, LineHeld Line)
{
    /// <summary>Notes to other departments that nobody there has acknowledged.</summary>
    public IReadOnlyList<OpenDepartmentNote> Departments { get; init; } = [];

    /// <summary>What stands out, worst first, what follows from a reading under it.</summary>
    public IReadOnlyList<Folded<OpenFinding>> StandsOut { get; } = Folding.Of(Site, Now);

    /// <summary>Why nothing is computed of one person's walks just now; null when it may be.</summary>
    public string? OwnOff { get; init; }

    /// <summary>Equipment code to what it does; of what is not among them nobody has said anything.</summary>
    public IReadOnlyDictionary<string, EquipmentStatus> Equipment { get; init; } = new Dictionary<string, EquipmentStatus>(StringComparer.OrdinalIgnoreCase);
}

/// <summary>The whole state of one terminal's screen. Everything that is shown follows from it.</summary>
internal sealed record Session(Facts Facts)
{
    public int Width { get; init; } = 80;

    public int Height { get; init; } = 24;

    /// <summary>The clock, in site time.</summary>
    public DateTimeOffset Clock { get; init; } = Facts.Now.At;

    /// <summary>When a key was last pressed.</summary>
    public DateTimeOffset LastKey { get; init; } = Facts.Now.At;

    /// <summary>Code of the person who is typing; null until they said so.</summary>
    public string? By { get; init; }

    /// <summary>From Now, one step deeper each. Never empty.</summary>
    public ImmutableList<Page> Pages { get; init; } = [new NowPage(-1, 0)];

    /// <summary>What was typed and is not in the journal; null when there is nothing.</summary>
    public Draft? Draft { get; init; }

    /// <summary>When the draft's last line was forced to the disk.</summary>
    public DateTimeOffset? DraftKeptAt { get; init; }

    /// <summary>When a save failed last; null when none did since.</summary>
    public DateTimeOffset? SaveFailedAt { get; init; }

    /// <summary>Drafts that earlier sessions left behind.</summary>
    public ImmutableList<LeftDraft> Left { get; init; } = [];

    /// <summary>What the holder has said of the line so far, on the way to a handover.</summary>
    public Giving Giving { get; init; } = Giving.Nothing;

    /// <summary>What the one who takes over has said so far.</summary>
    public Taking Taking { get; init; } = Taking.Nothing;

    /// <summary>One line that answers the last key; empty when there is nothing to say.</summary>
    public Span Said { get; init; } = new("");

    /// <summary>What belongs to this record is being looked for; null when nobody waits for it: any other key ends the waiting.</summary>
    public long? Looking { get; init; }

    /// <summary>The key that leaves was pressed once, with something unsaved.</summary>
    public bool Leaving { get; init; }

    /// <summary>The person has left.</summary>
    public bool Over { get; init; }

    public Site Site => Facts.Site;

    public Page Top => Pages[^1];

    /// <summary>The page under the top one; Now under itself.</summary>
    public Page Under => Pages[Math.Max(0, Pages.Count - 2)];

    public Session Say(string text, Look look = Look.Strong) => this with { Said = new Span(text, look) };

    public Session Open(Page page) => this with { Pages = Pages.Add(page) };

    public Session Put(Page page) => this with { Pages = Pages.SetItem(Pages.Count - 1, page) };

    /// <summary>Back to Now, and to its top.</summary>
    public Session Home() => this with { Pages = [new NowPage(-1, 0)] };

    /// <summary>The one who is typing holds the line.</summary>
    public bool Holds => By is not null && Facts.Line.Holder is { } holder && holder.Code.Equals(By, StringComparison.OrdinalIgnoreCase);

    /// <summary>One step back; on Now to its top, where what is urgent stands.</summary>
    public Session Back() => Pages.Count switch
    {
        1 => this,
        2 when Pages[0] is NowPage => Home(),
        _ => this with { Pages = Pages.RemoveAt(Pages.Count - 1) },
    };

    /// <summary>Without the questions that led to what was just written.</summary>
    public Session Asked() => Top is AskPage or PickPage or CautionsPage ? Back().Asked() : this;

    /// <summary>How many lines the page keys move.</summary>
    public int Leaf => Math.Max(1, Height - 10);
}
