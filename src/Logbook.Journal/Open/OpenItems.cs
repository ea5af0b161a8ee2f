using System.Collections.Immutable;
using System.Globalization;

namespace Logbook.Journal;

/// <summary>A carried item that is open.</summary>
/// <param name="Fields">As they stand after the confirmations.</param>
public sealed record CarriedItem(
    long Id, string ItemKind, string On, string Text, DateTimeOffset? Until, string? Owner,
    IReadOnlyDictionary<string, string> Fields, DateTimeOffset Since, string By)
{
    /// <summary>As it is when it is opened.</summary>
    public static CarriedItem Opened(JournalRecord record, Carry carry) => new(record.Seq, carry.ItemKind, carry.On, carry.Text, carry.Until, carry.Owner, carry.Fields, record.At, record.By)
    {
        Count = carry.Fields.TryGetValue("inside", out var inside) ? new(inside, record.At, record.By) : null,
    };

    /// <summary>The last look at it; null when nobody has confirmed it since it was opened.</summary>
    public Confirmation? Confirmed { get; init; }

    /// <summary>The last time that somebody truly saw it: a look that found it, else its opening.</summary>
    public DateTimeOffset LastSeen { get; init; } = Since;

    /// <summary>The changes that were reported of it, the newest last: each tells something else, and none takes another back.</summary>
    public ImmutableList<Confirmation> Changes { get; init; } = [];

    /// <summary>The injury that was recorded of its owner while they owned it; it stays until somebody else owns it.</summary>
    public long? OwnerHurt { get; init; }

    /// <summary>When a field got its present value, and from whom; a field that is not here has that of the opening.</summary>
    public ImmutableDictionary<string, Confirmation> FieldsSet { get; init; } = ImmutableDictionary<string, Confirmation>.Empty;

    /// <summary>
    /// Of a permit: the count of people inside that stands. It is the opener's until somebody counts people out; from then on
    /// theirs. Whoever tells of more people, or of as many, takes it from nobody. Null while nobody has counted.
    /// </summary>
    public PeopleCount? Count { get; init; }

    /// <summary>Codes of the people whose own lock is recorded as on, in the order in which they went on.</summary>
    public ImmutableList<string> Locks { get; init; } = [];

    /// <summary>Codes of those who owned it before, in that order: a lock is not moved by a new owner's name. Who took the own lock off is not among them.</summary>
    public ImmutableList<string> OwnersBefore { get; init; } = [];

    /// <summary>True for an injury of the one who owns that item; the opener owns what has no other owner.</summary>
    public bool HurtOwnerOf(CarriedItem item) => ItemKind == "injury" && item.ItemKind != "injury" && Fields.GetValueOrDefault("who") is { } who && who.Equals(item.Owner ?? item.By, StringComparison.OrdinalIgnoreCase);

    /// <summary>True while a lock of that person is recorded as on.</summary>
    public bool HasLockOf(string code) => Locks.Contains(code, StringComparer.OrdinalIgnoreCase);

    /// <summary>Codes of everybody else whose lock is recorded as on.</summary>
    public ImmutableList<string> LocksBeside(string code) => Locks.RemoveAll(owner => owner.Equals(code, StringComparison.OrdinalIgnoreCase));

    /// <summary>Of a permit: the record that closed an isolation on which it stood; null when none was closed under it.</summary>
    public long? LockoutClosed { get; init; }

    /// <summary>
    /// True for a permit that stands on this isolation: the isolation names the permit's number, or the permit names the
    /// isolation by its record or its card.
    /// </summary>
    public bool StandsOn(CarriedItem isolation)
    {
        static bool Same(string? one, string? other) => !string.IsNullOrWhiteSpace(one) && one.Trim().TrimStart('#').Equals(other?.Trim().TrimStart('#'), StringComparison.OrdinalIgnoreCase);
        var named = Fields.GetValueOrDefault("isolation");
        return this is { ItemKind: "permit" } && isolation is { ItemKind: "isolation" }
            && (Same(isolation.Fields.GetValueOrDefault("permit"), Fields.GetValueOrDefault("number"))
                || Same(named, isolation.Id.ToString(CultureInfo.InvariantCulture)) || Same(named, isolation.Fields.GetValueOrDefault("card")));
    }

    /// <summary>Kinds that can hurt: never counted, cut or demoted.</summary>
    public bool IsHazard => CanHurt(ItemKind, Text, Fields) || (ItemKind is "wash" && ChangedToAcid);

    /// <summary>A permit says that people may be inside until it is closed, or the last count says none: not counted is not none, unless the permit lets nobody in.</summary>
    public bool MayBeInside => ItemKind == "permit" && (Fields.TryGetValue("inside", out var inside) ? CountIn(inside) is not 0 : !LetsNobodyIn);

    /// <summary>A permit of which it is said that it is no entry, as for hot work or the opening of a line; one that does not say may be one.</summary>
    public bool LetsNobodyIn => ItemKind == "permit" && "no".Equals(Fields.GetValueOrDefault("entry"), StringComparison.OrdinalIgnoreCase);

    /// <summary>True when fewer people are inside by it than by this: on such a word a permit is closed and its lockout taken off.</summary>
    public bool IsCountedOutBy(CarriedItem after)
    {
        static int? Inside(CarriedItem permit) => permit.Fields.TryGetValue("inside", out var inside) ? CountIn(inside) : null;
        return ItemKind == "permit" && (Inside(after) < Inside(this) || (MayBeInside && !after.MayBeInside));
    }

    /// <summary>Whose word it is how many are inside: who counted, and before anybody has, who opened the permit.</summary>
    public string Counter => Count?.By ?? By;

    /// <summary>True when the present number is that person's own, and nobody else has told of more people since.</summary>
    public bool IsCountOf(string code) => code.Equals(Counter, StringComparison.OrdinalIgnoreCase)
        && code.Equals(FieldsSet.GetValueOrDefault("inside")?.By ?? By, StringComparison.OrdinalIgnoreCase);

    /// <summary>What the item is when a look has told of it: its fields, and whether it speaks of acid.</summary>
    public CarriedItem Told(CarryConfirmed look) => this with
    {
        Until = look.Until ?? Until,
        Owner = look.Owner ?? Owner,
        ChangedToAcid = ChangedToAcid || SaysAcid(look.Changed),
        Fields = look.Fields.Aggregate(Fields.ToImmutableDictionary(StringComparer.Ordinal), (all, field) => all.SetItem(field.Key, field.Value)),
    };

    /// <summary>True when a change that was told of it speaks of acid: what is told later does not take that back.</summary>
    public bool ChangedToAcid { get; init; }

    /// <summary>The number with which a count of people begins (<c>1 by the attendant</c>); null when it begins with none.</summary>
    public static int? CountIn(string counted) =>
        int.TryParse(string.Concat(counted.TrimStart().TakeWhile(char.IsAsciiDigit)), NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : null;

    /// <summary>A wash is an acid one by its field or by its words: whoever typed the words alone must not have hidden it.</summary>
    public static bool CanHurt(string kind, string text, IReadOnlyDictionary<string, string> fields) =>
        kind is "isolation" or "permit" or "bypass" or "safety-equipment" or "injury" or "release"
        || (kind is "wash" && (fields.ContainsKey("acid") || SaysAcid(text) || fields.Values.Any(SaysAcid)));

    /// <summary>True when the words name acid, in general or one that such a line is washed with.</summary>
    public static bool SaysAcid(string? words) => words is not null && Acids.Any(acid => WordBegins(words, acid));

    // Acids of descaling: common practice, no source. Beginnings of words, so that "acidic" and "sulphamic" are found.
    private static readonly string[] Acids = ["acid", "hcl", "hydrochlor", "muriatic", "sulfam", "sulpham", "citric", "formic", "nitric"];

    private static bool WordBegins(string words, string begin)
    {
        for (var at = words.IndexOf(begin, StringComparison.OrdinalIgnoreCase); at >= 0; at = words.IndexOf(begin, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            if (at == 0 || !char.IsLetter(words[at - 1]))
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>How many people are inside under a permit, in the words of who counted.</summary>
public sealed record PeopleCount(string Inside, DateTimeOffset At, string By);

/// <summary>One look at a carried item.</summary>
public sealed record Confirmation(long Seq, DateTimeOffset At, string By, bool Seen, string? Changed);

/// <summary>A standing order and who has read it.</summary>
/// <param name="Seen">Code of the person to when they said so.</param>
public sealed record StandingOrder(
    long Id, string Text, DateTimeOffset Since, string By, DateTimeOffset? Until, ImmutableDictionary<string, DateTimeOffset> Seen)
{
    /// <summary>That it was withdrawn; null while nobody has.</summary>
    public Withdrawal? Withdrawn { get; init; }

    public bool HoldsAt(DateTimeOffset at) => Withdrawn is null && (Until is null || at < Until);

    /// <summary>True for a person who had read it and not yet that it was withdrawn.</summary>
    public bool EndIsNewTo(string code) => Withdrawn is { } end && Seen.ContainsKey(code) && !end.Seen.ContainsKey(code);
}

/// <summary>The end of a standing order.</summary>
/// <param name="Seen">Code of the person to when they read that it holds no longer.</param>
public sealed record Withdrawal(long Seq, DateTimeOffset At, string By, string Why, ImmutableDictionary<string, DateTimeOffset> Seen);

/// <summary>A note to another department that nobody there has acknowledged.</summary>
public sealed record OpenDepartmentNote(long Id, string To, string Text, DateTimeOffset At, string By);

/// <summary>An upset of the line; <paramref name="Ended"/> is null while it lasts.</summary>
public sealed record Upset(long Seq, DateTimeOffset Began, DateTimeOffset? Ended, string? Why, string By);

/// <summary>A jump of the clock that nobody has acknowledged.</summary>
public sealed record OpenClockJump(long Id, DateTimeOffset Before, DateTimeOffset After);
