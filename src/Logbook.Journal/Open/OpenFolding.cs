using System.Collections.Immutable;

namespace Logbook.Journal;

/// <summary>How what stays open moves forward: carried items, orders, notes to other departments, the clock, answers.</summary>
internal static class OpenFolding
{
    /// <summary>Swaps and holidays matter as long as somebody may ask who was due; older ones stand in the journal alone.</summary>
    private static readonly TimeSpan RosterKept = TimeSpan.FromDays(60);

    public static State AfterConfirmation(this State state, JournalRecord record, CarryConfirmed look)
    {
        var index = state.Carried.FindIndex(item => item.Id == look.Id);
        return index < 0 ? state : state with { Carried = state.Carried.SetItem(index, Confirm(state.Carried[index], record, look)) };
    }

    /// <summary>Who is said to have allowed an item has still to sign that, also when it is closed by then; who is named anew signs instead.</summary>
    public static State AfterNaming(this State state, JournalRecord record, long id, IReadOnlyDictionary<string, string> told) =>
        told.GetValueOrDefault("allowed-by") is { } named && !string.IsNullOrWhiteSpace(named) && state.Carried.Find(i => i.Id == id) is { } item
            ? state with
            {
                Line = state.Line with
                {
                    ToCountersign = state.Line.ToCountersign.Find(t => t.Seq == id) is { } waits
                        ? state.Line.ToCountersign.Replace(waits, waits with { Named = named.Trim(), NamedIn = record.Seq, NamedBy = record.By, Until = item.Until, Instead = item.Fields.GetValueOrDefault("instead") })
                        : state.Line.ToCountersign.Add(new(id, item.ItemKind, item.By, item.Since, record.Shift, item.Text) { Named = named.Trim(), NamedIn = record.Seq == id ? null : record.Seq, NamedBy = record.By, Until = item.Until, Instead = item.Fields.GetValueOrDefault("instead") }),
                },
            }
            : state;

    /// <summary>
    /// Permits that stood on a closed isolation keep that it was closed, and what somebody owned who was hurt keeps that: nothing
    /// else would tell.
    /// </summary>
    public static State AfterClosing(this State state, JournalRecord record, CarryClosed closed)
    {
        var item = state.Carried.Find(i => i.Id == closed.Id);
        return item is null ? state : state with
        {
            Carried = state.Carried.Remove(item).ConvertAll(left => left.StandsOn(item) ? left with { LockoutClosed = record.Seq } : item.HurtOwnerOf(left) ? left with { OwnerHurt = item.Id } : left),
        };
    }

    private static CarriedItem Confirm(CarriedItem item, JournalRecord record, CarryConfirmed look)
    {
        var confirmation = new Confirmation(record.Seq, record.At, record.By, look.Seen, look.Changed);
        return item.Told(look) with
        {
            Confirmed = look.OnlyNames ? item.Confirmed : confirmation,
            LastSeen = look.Seen && !look.OnlyNames ? record.At : item.LastSeen,
            Changes = look.Changed is null or CarryConfirmed.ItsEnd ? item.Changes : item.Changes.Add(confirmation),
            OwnerHurt = look.Owner is null ? item.OwnerHurt : null,
            Count = Counted(item, record, look),
            FieldsSet = look.Fields.Aggregate(item.FieldsSet, (all, field) => all.SetItem(field.Key, confirmation)),
            OwnersBefore = OwnersBefore(item, record, look),
            Locks = look.Lock switch
            {
                "on" => item.Locks.Remove(record.By, StringComparer.OrdinalIgnoreCase).Add(record.By),
                "off" => item.Locks.Remove(record.By, StringComparer.OrdinalIgnoreCase),
                _ => item.Locks,
            },
        };
    }

    private static ImmutableList<string> OwnersBefore(CarriedItem item, JournalRecord record, CarryConfirmed look)
    {
        var before = look.Lock == "off" ? item.OwnersBefore.Remove(record.By, StringComparer.OrdinalIgnoreCase) : item.OwnersBefore;
        return look.Owner is not { } owner ? before
            : item.Owner is { } left ? before.Remove(owner, StringComparer.OrdinalIgnoreCase).Remove(left, StringComparer.OrdinalIgnoreCase).Add(left)
            : before.Remove(owner, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Who counts people out is the one who has counted, or counts anew what is the own count; more people are told by anybody.</summary>
    private static PeopleCount? Counted(CarriedItem item, JournalRecord record, CarryConfirmed look) =>
        look.Fields.TryGetValue("inside", out var inside) && (item.IsCountedOutBy(item.Told(look)) || record.By.Equals(item.Counter, StringComparison.OrdinalIgnoreCase))
            ? new(inside, record.At, record.By) : item.Count;

    /// <summary>Who was away for a planned break must still find that an order ended. Judgement, no source.</summary>
    private static readonly TimeSpan WithdrawnKept = TimeSpan.FromDays(14);

    public static State AfterOrder(this State state, JournalRecord record, OrderGiven order) => state with
    {
        Orders = state.Orders.RemoveAll(o => o.Withdrawn is { } end ? end.At < record.At - WithdrawnKept : !o.HoldsAt(record.At))
            .Add(new StandingOrder(record.Seq, order.Text, record.At, record.By, order.Until, ImmutableDictionary.Create<string, DateTimeOffset>(StringComparer.OrdinalIgnoreCase))),
    };

    /// <summary>The first time counts: reading it again does not make it later.</summary>
    public static State AfterOrderSeen(this State state, JournalRecord record, OrderSeen seen)
    {
        var index = state.Orders.FindIndex(order => order.Id == seen.Id);
        if (index < 0)
        {
            return state;
        }

        var order = state.Orders[index];
        StandingOrder after = order.Withdrawn is not { } end
            ? order.Seen.ContainsKey(record.By) ? order : order with { Seen = order.Seen.SetItem(record.By, record.At) }
            : end.Seen.ContainsKey(record.By) ? order : order with { Withdrawn = end with { Seen = end.Seen.SetItem(record.By, record.At) } };
        return after == order ? state : state with { Orders = state.Orders.SetItem(index, after) };
    }

    public static State AfterOrderWithdrawn(this State state, JournalRecord record, OrderWithdrawn withdrawn)
    {
        var index = state.Orders.FindIndex(order => order.Id == withdrawn.Id && order.Withdrawn is null);
        return index < 0 ? state : state with
        {
            Orders = state.Orders.SetItem(index, state.Orders[index] with
            {
                Withdrawn = new Withdrawal(record.Seq, record.At, record.By, withdrawn.Why, ImmutableDictionary.Create<string, DateTimeOffset>(StringComparer.OrdinalIgnoreCase).Add(record.By, record.At)),
            }),
        };
    }

    public static State AfterDepartment(this State state, JournalRecord record, DepartmentNote note) => state with
    {
        Departments = note.Acknowledges is { } id
            ? state.Departments.RemoveAll(open => open.Id == id)
            : state.Departments.Add(new OpenDepartmentNote(record.Seq, note.To ?? "", note.Text, record.At, record.By)),
    };

    public static State AfterRoster(this State state, JournalRecord record, RosterChange change) => state with
    {
        Roster = state.Roster.RemoveAll(old => old.To < record.At - RosterKept).Add(change),
    };

    public static State AfterClock(this State state, JournalRecord record, ClockJumped clock) => state with
    {
        ClockJumps = clock.Acknowledges is { } id ? state.ClockJumps.RemoveAll(open => open.Id == id)
            : clock is { Before: { } before, After: { } after } ? state.ClockJumps.Add(new OpenClockJump(record.Seq, before, after))
            : state.ClockJumps,
    };

    public static State AfterAnswer(this State state, JournalRecord record, FindingAnswered answer)
    {
        var findings = state.Findings.ToBuilder();
        foreach (var (tag, open) in state.Findings.Where(pair => pair.Value.Exists(f => f.Seq == answer.Seq && f.Number == answer.Number)))
            findings[tag] = open.ConvertAll(f => f.Seq == answer.Seq && f.Number == answer.Number ? f with { Answer = new FindingAnswer(record.Seq, record.By, answer.Text) } : f);
        return state with
        {
            Findings = findings.ToImmutable(),
            Unanswered = state.Unanswered.RemoveAll(f => f.Seq == answer.Seq && f.Number == answer.Number),
        };
    }

    /// <summary>
    /// What an entry leaves open by itself: an urgent finding waits for its answer, one for each point and code, the first of an
    /// excursion; a point that it was unsafe to reach is an action at once, unless one waits for it already.
    /// </summary>
    public static State AfterOpening(this State state, JournalRecord record, Entry entry)
    {
        var unreached = entry.Readings.Where(r => r.NotTaken && IsUnsafe(r.Why) && !state.Carried.Exists(c => Unreached(c).Contains(r.Point, StringComparer.OrdinalIgnoreCase))).ToList();
        return state with
        {
            Unanswered = Waiting(state.Unanswered, OpenFinding.Numbered(record.Seq, record.At, entry.Findings)),
            Carried = unreached.Count == 0 ? state.Carried : state.Carried.Add(Action(state, record, unreached)),
        };
    }

    /// <summary>
    /// What a corrected entry said is judged anew: only what is still urgent waits for its answer. Where it was the first of an
    /// excursion that a later reading bears out, that one waits instead.
    /// </summary>
    public static State AfterReopening(this State state, JournalRecord record, Correction correction)
    {
        var gone = state.Unanswered.FindAll(f => f.IsOf(correction.Target));
        var borneOut = gone.SelectMany(f => state.Findings.GetValueOrDefault(f.Finding.Point ?? "", []).Where(s => s.Answer is null && s.Finding.Code == f.Finding.Code));
        return state with
        {
            Unanswered = Waiting(state.Unanswered.RemoveAll(f => f.IsOf(correction.Target)), OpenFinding.Numbered(record.Seq, correction.ReadAt, correction.Findings, correction.Target)
                .Where(f => correction.Answered?.Contains(f.Number) != true).Concat(borneOut)),
        };
    }

    /// <summary>What only stands again, since a value was taken back, waits already or has its answer.</summary>
    private static ImmutableList<OpenFinding> Waiting(ImmutableList<OpenFinding> open, IEnumerable<OpenFinding> findings) =>
        findings.Where(f => f.Finding is { Level: Level.Urgent, Again: not true }).Aggregate(open, (all, f) =>
            all.Exists(o => o.Finding.Point == f.Finding.Point && o.Finding.Code == f.Finding.Code) ? all : all.Add(f));

    private const string Unsafe = "unsafe to reach";
    private const string MakeSafe = ", make it safe to read: ";

    private static bool IsUnsafe(string? why) => why is not null && why.StartsWith(Unsafe, StringComparison.OrdinalIgnoreCase);

    /// <summary>The points that such an action is about; none of any other item.</summary>
    private static string[] Unreached(CarriedItem item) =>
        item.ItemKind == "action" && item.Text.StartsWith(Unsafe, StringComparison.Ordinal) && item.Text.LastIndexOf(MakeSafe, StringComparison.Ordinal) is >= 0 and var end
            ? item.Text[(end + MakeSafe.Length)..].Split(", ") : [];

    private static CarriedItem Action(State state, JournalRecord record, List<Reading> unreached)
    {
        var points = unreached.Select(r => state.Site?.FindPoint(r.Point)).ToList();
        var words = unreached.Select(r => r.Why![Unsafe.Length..].TrimStart(':', ' ')).Where(w => w.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var on = points.Select(p => p?.Equipment ?? p?.Area).FirstOrDefault(place => place is not null) ?? "site";
        return new CarriedItem(
            record.Seq, "action", on, $"{Unsafe}{(words.Count == 0 ? "" : $" ({string.Join("; ", words)})")}{MakeSafe}{string.Join(", ", unreached.Select(r => r.Point))}", null, null,
            ImmutableDictionary<string, string>.Empty, record.At, record.By);
    }
}
