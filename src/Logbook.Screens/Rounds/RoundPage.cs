using System.Collections.Immutable;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A round being typed: one list in walking order, one field that moves along it.</summary>
/// <param name="Slot">The slot that was open when the round was opened; null when none was.</param>
internal sealed record RoundPage(Round Round, RoundNow? Slot, ImmutableList<RoundRow> Rows, Links Links) : Page
{
    /// <summary>Derived tags that come mostly from these rows, and not from other rounds.</summary>
    public IReadOnlySet<string> Mostly { get; } = Links.Mostly(Rows.Select(r => r.Point.Tag));

    public int Current { get; init; }

    /// <summary>Every row is answered and the field stands behind the last: what is typed there has no row.</summary>
    public bool AtEnd { get; init; }

    /// <summary>What is being typed: nothing takes it but Enter.</summary>
    public string Field { get; init; } = "";

    /// <summary>What is said of the field.</summary>
    public RowCheck Live { get; init; } = RowCheck.None;

    /// <summary>What stands in the field was refused: the next digit begins it anew, and letters command.</summary>
    public bool Refused { get; init; }

    /// <summary>A value is being typed: whatever is written belongs to it.</summary>
    public bool IsTyping => Field.Length > 0 && !Refused;

    /// <summary>The field was refused only because it is beyond what is possible: with a reason it stands.</summary>
    public bool MayKeep { get; init; }

    /// <summary>The row that was answered last.</summary>
    public int? Answered { get; init; }

    /// <summary>Urgent findings that were saved at once and are still to be read.</summary>
    public IReadOnlyList<Finding> Spoken { get; init; } = [];

    /// <summary>Derived tag to its newest result in this round.</summary>
    public ImmutableDictionary<string, ResultRow> Results { get; init; } = ImmutableDictionary.Create<string, ResultRow>(StringComparer.OrdinalIgnoreCase);

    /// <summary>The entry whose readings are taken a second time; null for a round.</summary>
    public long? SecondOf { get; init; }

    public DateTimeOffset? WalkStart { get; init; }

    public DateTimeOffset? WalkEnd { get; init; }

    public override KeyTable Keys => RoundKeys.Table;

    public RoundRow Row => Rows[Current];

    /// <summary>The row that comes next and is asked for, going round; null when every other one is answered. What is not asked for is passed over.</summary>
    public int? NextOpen => Enumerable.Range(1, Rows.Count - 1).Select(n => (int?)((Current + n) % Rows.Count)).FirstOrDefault(i => Rows[i!.Value].IsAsked);

    /// <summary>The next row below that is asked for or answered; this one when there is none.</summary>
    public int NextBelow => Enumerable.Range(Current + 1, Rows.Count - 1 - Current).FirstOrDefault(i => Rows[i].Applies, Current);

    public bool AllAnswered => Rows.TrueForAll(r => r.Answered || !r.Applies);

    /// <summary>The rows that a derived point is computed from.</summary>
    public IReadOnlyList<int> RowsOf(string derived) => [.. Enumerable.Range(0, Rows.Count).Where(i => Links.Makes(Rows[i].Point.Tag, derived))];

    public override Layout Draw(Session session) => RoundDrawing.Draw(session, this);

    /// <summary>The present row's line with this text, read now unless the person or the walk says otherwise.</summary>
    public DraftLine Line(Session session, string? text, DateTimeOffset now)
    {
        var line = Row.Line ?? new DraftLine { Round = Round.Id, By = session.By!, Point = Row.Point.Tag, At = WalkEnd ?? now };
        var retyped = line.Text is null or "-" || line.Text == text ? line.Retyped : line.Retyped ?? line.Text;
        return line with
        {
            Text = text,
            At = line.AtGiven ? line.At : WalkEnd ?? now,
            Why = null,
            Retyped = retyped,
            WalkStart = WalkStart,
            WalkEnd = WalkEnd,
            SecondOf = SecondOf,
        };
    }

    public RoundPage Put(RoundRow row) => this with { Rows = Rows.SetItem(Current, row) };

    public RoundPage MoveTo(int row) => this with { Current = row, AtEnd = false, Field = "", Live = RowCheck.None, Refused = false, MayKeep = false };
}
