using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What matters now, in the order in which a person must see it.</summary>
public sealed record NowView
{
    public required string Site { get; init; }

    public required DateTimeOffset At { get; init; }

    public required string ShiftId { get; init; }

    /// <summary>Who is in charge, in words: for now the crew that is due, and that nobody has signed.</summary>
    public required string InCharge { get; init; }

    /// <summary>What can hurt, each in full. Never counted, cut or demoted.</summary>
    public required IReadOnlyList<HazardLine> Hazards { get; init; }

    /// <summary>What stands out, worst first.</summary>
    public required IReadOnlyList<OpenFinding> StandsOut { get; init; }

    /// <summary>The systems in the liquor's order, each with one mark: '.' said nothing, '-' no fresh reading, '?' watch, '!' urgent, 'x' not running.</summary>
    public required IReadOnlyList<(string Area, char Mark)> Line { get; init; }

    /// <summary>Rounds that are open or missed in this shift.</summary>
    public required IReadOnlyList<RoundNow> Rounds { get; init; }

    public required IReadOnlyList<CarriedItem> Carried { get; init; }

    /// <summary>True when the folder's files differ from those in force.</summary>
    public required bool FilesDiffer { get; init; }

    public static NowView Of(Desk desk) => throw new NotImplementedException();
}

/// <summary>One thing that can hurt.</summary>
/// <param name="Word">One word of its kind: <c>inside</c>, <c>locked</c>, <c>defeated</c>, <c>out</c>, <c>acid</c>.</param>
public sealed record HazardLine(string Word, string Text, DateTimeOffset Since, long Seq);

/// <summary>One slot of a round as it stands.</summary>
public sealed record RoundNow(string Round, string Title, DateTimeOffset DueAt, DateTimeOffset Closes, int Done, int Of, CheckState State);
