using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// The slots of one round as a sheet: a row a slot, a column a point. It reaches a day beyond the stretch asked for on
/// both sides, so that a reading near the edge finds its nearest slot even when that lies outside.
/// </summary>
internal sealed class RoundSheet
{
    // How long after the walk's own time a walk may be typed and still be on time, though its window has closed.
    private static readonly TimeSpan Typing = TimeSpan.FromMinutes(30);
    private static readonly TimeSpan Reach = TimeSpan.FromHours(26);

    private readonly Site _site;
    private readonly Round _round;
    private readonly Dictionary<string, int> _columns;
    private readonly Answer?[,] _answers;

    public RoundSheet(SiteInForce force, Round round, DateTimeOffset from, DateTimeOffset to)
        : this(force.Site, round, Calendar.Slots(force.Site, round, from - Reach, to + Reach).Where(s => s.DueAt >= force.From && s.DueAt < force.To), from, to)
    {
    }

    public RoundSheet(Site site, Round round, IEnumerable<Slot> slots, DateTimeOffset from, DateTimeOffset to)
    {
        _site = site;
        _round = round;
        _columns = round.Points.Select((tag, i) => (tag, i)).ToDictionary(x => x.tag, x => x.i, StringComparer.OrdinalIgnoreCase);
        Slots = [.. slots];
        var asked = Slots.Where(s => s.DueAt >= from && s.DueAt < to).ToList();
        Opens = asked.Min(s => (DateTimeOffset?)s.Opens);
        Closes = asked.Max(s => (DateTimeOffset?)(s.Closes > s.DueAt + Reach ? s.Closes : s.DueAt + Reach));
        _answers = new Answer?[Slots.Count, round.Points.Count];
    }

    /// <summary>When the first window opens that is asked for; null when nothing falls due.</summary>
    public DateTimeOffset? Opens { get; }

    /// <summary>Up to when a reading may belong to a slot that is asked for: its window's end, or the next slot for a late one.</summary>
    public DateTimeOffset? Closes { get; }

    public IReadOnlyList<Slot> Slots { get; }

    public IEnumerable<string> Points => _columns.Keys;

    public bool Has(string point) => _columns.ContainsKey(point);

    public bool Is(string? round) => _round.Id.Equals(round, StringComparison.OrdinalIgnoreCase);

    /// <summary>Row of the slot that a reading of that time belongs to: the nearest, a tie to the earlier; of a period the one that holds it. -1 when none.</summary>
    public int Nearest(DateTimeOffset at)
    {
        var after = FirstDueFrom(at);
        if (_round.Schedule is Schedule.Per)
        {
            // A period is due a little before its end and still holds what is read after that.
            after = after > 0 && at < Slots[after - 1].Closes ? after - 1 : after;
            return after < Slots.Count && Slots[after].Opens <= at ? after : -1;
        }

        if (after == Slots.Count || (after > 0 && Away(after - 1, at) <= Away(after, at)))
        {
            after--;
        }

        return after;
    }

    /// <summary>How far a time is from a slot's due time.</summary>
    public TimeSpan Away(int slot, DateTimeOffset at) => (at - Slots[slot].DueAt).Duration();

    /// <summary>Keeps the better of two answers: on time before late before not taken before what makes nothing good, then the first value or the last reason.</summary>
    public void Put(int slot, Answer answer)
    {
        if (answer.CountsAt < Slots[slot].Opens)
        {
            return;
        }

        ref var kept = ref _answers[slot, _columns[answer.Point]];
        if (kept is null || Rank(Slots[slot], answer) < Rank(Slots[slot], kept) || (!answer.Taken && !kept.Taken))
        {
            kept = answer;
        }
    }

    /// <summary>Rows of the slots that fall due in [from, to) and closed after the log began, in order.</summary>
    public IEnumerable<int> Rows(DateTimeOffset from, DateTimeOffset to, DateTimeOffset begun)
    {
        for (var row = FirstDueFrom(from); row < Slots.Count && Slots[row].DueAt < to; row++)
        {
            if (Slots[row].Closes >= begun)
            {
                yield return row;
            }
        }
    }

    /// <summary>What became of the checks of one slot. Near a shift change it asks for the safety points alone.</summary>
    public IEnumerable<DueCheck> Checks(int row, DateTimeOffset now, Circumstances around) => Slots[row].Points.Select(tag => Check(row, tag, now, around));

    private DueCheck Check(int row, string tag, DateTimeOffset now, Circumstances around)
    {
        var (slot, answer) = (Slots[row], _answers[row, _columns[tag]]);
        answer = answer is { TakenBack: true } && now <= TypedBy(slot) ? null : answer;
        if (answer is { Taken: true })
        {
            return Answered(slot, tag, answer); // whatever stood still
        }

        Rest? Rests(DateTimeOffset saidBy) => around.Rests(_site, _site.FindPoint(tag), slot.DueAt, InsteadOfTrips.Is(_round.Id), saidBy);
        var rests = Rests(DateTimeOffset.MaxValue);
        var inTime = rests is null ? null : Rests(TypedBy(slot));
        if (answer is { TakenBack: true } && rests is null)
        {
            return Check(slot, tag, CheckState.Missed) with { TakenBack = true, Why = $"the value typed was {(answer.Why is { } why && why.StartsWith("taken back", StringComparison.Ordinal) ? Say.Visible(why) : "taken back")} {Say.Ref(answer.Seq)}" };
        }

        return answer is not null && inTime is null ? Answered(slot, tag, answer) : Open(slot, tag, rests, inTime, now) with { Answer = answer };
    }

    private DueCheck Answered(Slot slot, string tag, Answer answer)
    {
        var state = Rank(slot, answer) switch { 0 => CheckState.Done, 1 => CheckState.Late, 2 => CheckState.NotTaken, _ => CheckState.Missed };
        var why = state switch
        {
            CheckState.Done => null,
            CheckState.NotTaken => answer.Why,
            CheckState.Missed => $"said later: read {Say.Time(_site, answer.TakenAt, slot.DueAt)}, typed {Say.Time(_site, answer.Entered, slot.DueAt)}",
            _ => answer.CountsAt > slot.Closes ? $"read {Say.Time(_site, answer.TakenAt, slot.DueAt)}"
                : $"read {Say.Time(_site, answer.TakenAt, slot.DueAt)}, typed later, {Say.Time(_site, answer.Entered, slot.DueAt)}",
        };
        return new(_round.Id, tag, slot, state, why) { Answer = answer };
    }

    private DueCheck Open(Slot slot, string tag, Rest? rests, Rest? inTime, DateTimeOffset now)
    {
        if (rests is { Upset: true } && inTime is null)
        {
            // An upset spares what it was declared for in time; declared afterwards it explains a miss and does not undo it.
            return Check(slot, tag, CheckState.Missed) with { Why = $"{rests.Why}, declared afterwards at {Said(slot, rests)}", SaidLater = rests.SaidBy.Seq };
        }

        if (rests is not null)
        {
            var rest = Check(slot, tag, CheckState.NotApplicable) with { Why = (inTime ?? rests).Why, Upset = (inTime ?? rests).Upset };
            return inTime is not null ? rest : rest with
            {
                Why = $"{rests.Why}, said later: typed {Said(slot, rests)}",
                SaidLater = rests.SaidBy.Seq,
            };
        }

        return Check(slot, tag, now < slot.Opens ? CheckState.Coming : now <= TypedBy(slot) ? CheckState.Due : CheckState.Missed);
    }

    private string Said(Slot slot, Rest rests) => $"{Say.Time(_site, rests.SaidBy.Entered, slot.DueAt)} by {Say.Person(_site, rests.SaidBy.By)} {Say.Ref(rests.SaidBy.Seq)}";

    /// <summary>Up to when it can be answered on time. A field walk is typed after it: it is not missed while it could still be typed.</summary>
    private DateTimeOffset TypedBy(Slot slot) => _round.Field ? slot.Closes + _round.Takes + Typing : slot.Closes;

    private DueCheck Check(Slot slot, string tag, CheckState state) => new(_round.Id, tag, slot, state, null);

    /// <summary>
    /// On time is what was read in the window and typed before that closes; what was walked with a sheet, within the walk's length
    /// and half an hour of it. Any other value with an earlier time is late: it makes no missed check good in silence. Of a check
    /// for safety it makes none good at all, and covers no reason that was given.
    /// </summary>
    private int Rank(Slot slot, Answer answer) => !answer.Taken ? 2
        : IsForSafety(answer.Point) && !answer.Walked && answer.CountsAt <= slot.Closes && answer.Entered > TypedBy(slot) ? 3
        : answer.CountsAt <= slot.Closes && (answer.Entered <= slot.Closes || ((_round.Field || answer.Walked) && answer.Entered <= answer.CountsAt + _round.Takes + Typing)) ? 0
        : 1;

    /// <summary>A safety point, or what stands in for a defeated trip.</summary>
    private bool IsForSafety(string tag) => InsteadOfTrips.Is(_round.Id) || _site.FindPoint(tag) is { Always: true };

    private int FirstDueFrom(DateTimeOffset at)
    {
        var (low, high) = (0, Slots.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Slots[middle].DueAt < at ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
