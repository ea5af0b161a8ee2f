using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Whose locks hang on an isolation, as far as it is recorded; the lock board knows what is true.</summary>
public static class LocksOn
{
    /// <summary><c>locks recorded: Operator one</c>; whose lock a new owner does not move. Each a part of a sentence.</summary>
    public static IEnumerable<string> Words(Site site, CarriedItem item) => item.ItemKind != "isolation" ? [] :
    [
        .. item.Locks.IsEmpty ? [] : new[] { $"locks recorded: {string.Join(", ", item.Locks.Select(code => Say.Person(site, code)))}" },
        .. Staying(site, item, item.OwnersBefore),
    ];

    /// <summary>That no lock is recorded on an isolation under whose permit people are or may be inside; null when one is, or nobody is.</summary>
    public static string? Missing(IReadOnlyList<CarriedItem> carried, CarriedItem item) =>
        item is not { ItemKind: "isolation", Locks.IsEmpty: true } || carried.FirstOrDefault(permit => permit.MayBeInside && permit.StandsOn(item)) is not { } permit ? null
        : $"NO LOCK RECORDED, people {(SignedWriting.CountedInside(permit) is null ? "may be " : "")}inside {Say.Ref(permit.Id)}";

    /// <summary>
    /// What a lock that comes off leaves on an isolation while people are or may be inside under its permit: how many locks are still
    /// recorded and whose, and which of these is hurt and away. Null for another look, and where nobody is inside.
    /// </summary>
    /// <param name="before">As the item stood before.</param>
    public static string? OnLockOff(Site site, IReadOnlyList<CarriedItem> carried, CarriedItem before, CarryConfirmed look, string by)
    {
        var inside = look.Lock != "off" ? [] : carried.Where(permit => permit.MayBeInside && permit.StandsOn(before)).ToList();
        if (inside.Count == 0)
        {
            return null;
        }

        var left = before with { Locks = before.LocksBeside(by) };
        string Whose(string code) => Say.Person(site, code) + (carried.FirstOrDefault(i => i.ItemKind == "injury" && Handed.Same(i.Fields.GetValueOrDefault("who"), code)) is { } hurt ? $", HURT {Say.Ref(hurt.Id)}" : "");
        return Missing(carried, left)
            ?? $"people {(inside.TrueForAll(permit => SignedWriting.CountedInside(permit) is null) ? "may be " : "")}inside {Say.Ref(inside.Select(permit => permit.Id))}; locks still recorded: {string.Join("; ", left.Locks.Select(Whose))}";
    }

    /// <summary>What is said when the owner of this isolation changes: the name moves no lock and no key. Null for another item.</summary>
    /// <param name="before">As it stood before.</param>
    public static string? OnNewOwner(Site site, CarriedItem before, CarryConfirmed look) =>
        look.Owner is null || before.ItemKind != "isolation" ? null
        : string.Join("; ", Staying(site, before, [.. before.Locks.Append(before.Owner ?? before.By).Distinct(StringComparer.OrdinalIgnoreCase).Where(code => !Handed.Same(code, look.Owner))])
            .Append("who holds a key does not change by the owner's name: go by the lock board"));

    /// <summary>Of these people whose lock stays: those recorded as on; where none is recorded, any of them may have one there.</summary>
    private static IEnumerable<string> Staying(Site site, CarriedItem item, IReadOnlyList<string> people)
    {
        const string until = "stays until it is removed by the site's procedure";
        return item.Locks.IsEmpty ? people.Select(code => $"a lock of {Say.Person(site, code)}, if one is on, {until}")
            : people.Where(item.HasLockOf).Select(code => $"lock of {Say.Person(site, code)} {until}");
    }
}
