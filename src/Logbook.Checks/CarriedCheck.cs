using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What a carried item must say before it is worth carrying.</summary>
public static class CarriedCheck
{
    public static IEnumerable<Mistake> Mistakes(Site site, Carry item)
    {
        string[] kinds = [.. CarryKinds.All.Select(k => k.Name)];
        var kind = CarryKinds.Find(item.ItemKind);
        return
        [
            .. kind is null ? Writing.Of($"'{item.ItemKind}' is no kind of carried item", Spelling.Accepted(item.ItemKind, kinds)) : OfKind(kind, item),
            .. Given.EquipmentOrArea(site, item.On),
            .. Given.Text(item.Text, "the text"),
            .. CompensatingCheck(site, item),
            .. item.Owner is { } owner ? Given.Person(site, owner) : [],
        ];
    }

    /// <summary>What is wrong with one field as it is given, before the others are.</summary>
    /// <param name="by">Who opens the item.</param>
    public static IEnumerable<Mistake> OfField(Site site, string kind, string name, string value, string by)
    {
        var field = new Dictionary<string, string>(StringComparer.Ordinal) { [name] = value };
        return
        [
            .. Values(kind, field), .. AllowedBy(site, _ => false, kind, field, by), // whose code is closed is refused when it is written
            .. name switch { "point" => ReadByHand(site, value), "every" => HowOften(value), _ => [] },
        ];
    }

    private static IEnumerable<Mistake> OfKind(CarryKind kind, Carry item)
    {
        if (kind.NeedsUntil && item.Until is null)
        {
            yield return Mistake.Typed($"{Words.A(kind.Name)} needs its end", "--until TIME");
        }

        foreach (var field in kind.Fields.Where(f => string.IsNullOrWhiteSpace(item.Fields.GetValueOrDefault(f))))
        {
            var words = CarryKinds.Words.GetValueOrDefault(field);
            yield return field == "allowed-by"
                ? Mistake.Typed($"it is not said who allowed the {kind.Name}", "--set allowed-by=CODE")
                : Mistake.Typed($"{Words.A(kind.Name)} needs '{field}'", $"--set {field}={(words is null ? "VALUE" : string.Join("|", words))}");
        }

        foreach (var mistake in Values(kind.Name, item.Fields))
        {
            yield return mistake;
        }
    }

    /// <summary>Fields that the kind does not take, that take one of a few words, or that count people.</summary>
    /// <param name="already">Names that the item has from an older record: they may still be told anew.</param>
    public static IEnumerable<Mistake> Values(string kind, IReadOnlyDictionary<string, string> fields, params IEnumerable<string> already) =>
    [
        .. UnknownNames(kind, fields.Keys.Except(already, StringComparer.Ordinal)),
        .. fields.TryGetValue("inside", out var inside) && CarriedItem.CountIn(inside) is null ? [Mistake.Typed($"inside={inside}: how many are inside begins with a number", "--set inside=2, as the attendant counts")] : Array.Empty<Mistake>(),
        .. OneOfAFew(kind, fields),
    ];

    private static IEnumerable<Mistake> UnknownNames(string kind, IEnumerable<string> names)
    {
        var known = CarryKinds.Find(kind)?.Names ?? [];
        return names.Except(known, StringComparer.Ordinal).Select(name => Mistake.Typed($"{Words.A(kind)} takes no '{name}'", $"--set NAME=VALUE with: {string.Join(", ", known)}"));
    }

    private static IEnumerable<Mistake> OneOfAFew(string kind, IReadOnlyDictionary<string, string> fields) =>
        from field in fields
        let words = CarryKinds.Words.GetValueOrDefault(field.Key)
        where words is not null && !string.IsNullOrWhiteSpace(field.Value) && !words.Contains(field.Value, StringComparer.OrdinalIgnoreCase)
        select Mistake.Typed($"'{field.Value}' is no {field.Key} of {Words.A(kind)}", "accepted: " + string.Join(", ", words));

    /// <summary>
    /// Locks change hands without a gap: the incoming person's goes on before the outgoing person's comes off (orderly transfer
    /// between shifts, US 29 CFR 1910.147(f)(4)). What is otherwise at the board is told as a change, not as this step.
    /// </summary>
    public static IEnumerable<Mistake> LockOrder(Site site, CarriedItem item, string step, string by)
    {
        var code = site.FindPerson(by)?.Code ?? by;
        var mine = item.HasLockOf(code);
        return (item.ItemKind, step, mine) switch
        {
            (not "isolation", _, _) => [Mistake.Typed($"item {item.Id} is {Words.A(item.ItemKind)}: locks hang on an isolation", "")],
            (_, not ("on" or "off"), _) => [Mistake.Typed($"'{step}' is no step of a lock", "on or off")],
            (_, "on", true) => [Mistake.Typed($"a lock of {code} is recorded as on already")],
            (_, "off", false) => [Mistake.Typed($"no lock of {code} is recorded at item {item.Id}", Recorded(item))],
            (_, "off", true) when item.Locks.Count == 1 => [Mistake.Typed(
                $"the lock of {code} is the last one recorded at item {item.Id}",
                "the incoming person's lock goes on first; if the work is done, it comes off with the closing: carry close; if the board is otherwise, tell it with --changed")],
            _ => [],
        };
    }

    /// <summary>An isolation ends when nobody's lock is on it: nobody else's is recorded, and the own one is said to be off.</summary>
    /// <param name="step"><c>off</c> when the own lock comes off with it; null when nothing was said of it.</param>
    public static IEnumerable<Mistake> LocksOff(Site site, CarriedItem item, string? step, string by)
    {
        var code = site.FindPerson(by)?.Code ?? by;
        return item.LocksBeside(code).Count > 0 ? [Mistake.Typed($"item {item.Id} cannot be closed by {code} while others' locks are recorded as on", Recorded(item) + "; each takes off their own")]
            : (step, item.HasLockOf(code)) switch
            {
                (not (null or "off"), _) => [Mistake.Typed($"'{step}' is no step of a lock when the item is closed", "off")],
                (null, true) => [Mistake.Typed($"the own lock of {code} is recorded as on at item {item.Id}, which would be closed under it", "--lock off, once it is off the board")],
                ("off", false) => [Mistake.Typed($"no lock of {code} is recorded at item {item.Id}", Recorded(item))],
                _ => [],
            };
    }

    /// <summary>Who defeats a trip does not allow it: another one answers for that and signs it, somebody of this site and no operator.</summary>
    /// <param name="closed">Whether a person's code is closed.</param>
    public static IEnumerable<Mistake> AllowedBy(Site site, Func<string, bool> closed, string kind, IReadOnlyDictionary<string, string> fields, params string[] by)
    {
        if (fields.GetValueOrDefault("allowed-by") is not { } name || string.IsNullOrWhiteSpace(name))
        {
            return [];
        }

        var named = site.FindNamed(name);
        List<Person> can = [.. site.People.Where(p => p.Role != Role.Operator && !closed(p.Code) && !by.Contains(p.Code, StringComparer.OrdinalIgnoreCase))];
        var accepted = "--set allowed-by=CODE with one of: " + string.Join(", ", can.Select(p => p.Code));
        return named is null ? [Mistake.Typed($"'{name.Trim()}', who is said to have allowed the {kind}, is no person of this site", accepted)]
            : by.Contains(named.Code, StringComparer.OrdinalIgnoreCase) ? [Mistake.Typed($"{named.Name} cannot allow the own {kind}", accepted)]
            : can.Contains(named) ? []
            : [Mistake.Typed($"{named.Name} cannot allow a {kind}: an engineer or a supervisor does", accepted)];
    }

    /// <summary>
    /// A lower count lets a permit be closed and its lockout taken off: it comes from somebody who can know who came out, the
    /// permit's owner, whose count stands, who holds the line, or who is due on this shift. A higher one is taken from anybody.
    /// </summary>
    public static IEnumerable<Mistake> CountedDown(Desk desk, CarriedItem before, CarriedItem after, string by)
    {
        if (!before.IsCountedOutBy(after))
        {
            return [];
        }

        var may = MayCount(desk, before);
        return may.Contains(by, StringComparer.OrdinalIgnoreCase) ? [] : [Mistake.Typed(
            $"people are not counted out of permit {before.Fields.GetValueOrDefault("number", "")} (item {before.Id}) by {desk.Site.FindPerson(by)?.Code ?? by}, who is not its owner, whose count does not stand, who does not hold the line and is not due on this shift",
            "with the attendant, one of: " + string.Join(", ", may))];
    }

    /// <summary>
    /// Another owner, since the one before went away. A permit's owner may count people out of it, so who makes one is somebody who
    /// may count them out too, or a supervisor.
    /// </summary>
    public static IEnumerable<Mistake> NewOwner(Desk desk, CarriedItem item, CarryConfirmed look, string by)
    {
        if (look.Owner is not { } owner)
        {
            return [];
        }

        var may = item.ItemKind == "permit" ? MayCount(desk, item) : null;
        return
        [
            .. look.Seen ? [] : Writing.Of("what was not seen gets no other owner by it", "--owner CODE or --not-seen"),
            .. Given.Person(desk.Site, owner),
            .. desk.State.IsClosed(owner) ? Writing.Of($"'{owner}' is closed and owns nothing any more", "the code of who looks after it now") : [],
            .. owner.Equals(item.Owner, StringComparison.OrdinalIgnoreCase) ? Writing.Of($"{owner} is the owner of item {item.Id} already", "") : [],
            .. may is null || may.Contains(by, StringComparer.OrdinalIgnoreCase) || desk.Site.FindPerson(by)?.Role == Role.Supervisor ? []
                : Writing.Of($"a permit's owner may count people out: {desk.Site.FindPerson(by)?.Code ?? by} is not its owner, did not count, does not hold the line and is not due on this shift", "one of: " + string.Join(", ", may) + ", or a supervisor"),
        ];
    }

    private static IReadOnlyList<string> MayCount(Desk desk, CarriedItem permit) =>
    [
        .. new[] { permit.Owner ?? permit.By, permit.Counter, desk.State.Line.Holder?.Code }.OfType<string>()
            .Concat(OnShift.DueBy(desk.Site, Calendar.ShiftAt(desk.Site, desk.Now), desk.State.Roster)).Distinct(StringComparer.OrdinalIgnoreCase),
    ];

    /// <summary>
    /// A permit and the lockout that it stands on stay together while both are open: with the number changed, the lockout could
    /// be closed while people are inside.
    /// </summary>
    public static IEnumerable<Mistake> Unhung(IReadOnlyList<CarriedItem> carried, CarriedItem before, CarriedItem after) =>
        from other in carried
        let parted = (before.StandsOn(other) && !after.StandsOn(other)) || (other.StandsOn(before) && !other.StandsOn(after))
        where parted
        let permit = before.ItemKind == "permit" ? before : other
        let locked = before.ItemKind == "permit" ? other : before
        select Mistake.Typed(
            $"permit {permit.Fields.GetValueOrDefault("number", "")} (item {permit.Id}) stands on isolation {locked.Id}, and both are open: they are not parted",
            "close the permit first, when everybody is out; a lockout for another permit is opened as an item of its own");

    private static string Recorded(CarriedItem item) => item.Locks.IsEmpty ? "no lock is recorded" : "locks recorded: " + string.Join(", ", item.Locks);

    /// <summary>What is to be read instead of a defeated trip: a point, and how often.</summary>
    private static IEnumerable<Mistake> CompensatingCheck(Site site, Carry item)
    {
        var (point, every) = (item.Fields.GetValueOrDefault("point"), item.Fields.GetValueOrDefault("every"));
        return
        [
            .. point is null ? [] : ReadByHand(site, point),
            .. (point is null) != (every is null) ? [Mistake.Typed("'point' and 'every' belong together", "--set point=TAG --set every=30m")] : Array.Empty<Mistake>(),
            .. every is null ? [] : HowOften(every),
        ];
    }

    private static IEnumerable<Mistake> ReadByHand(Site site, string point) => site.FindPoint(point) is { Kind: PointKind.Read } ? []
        : [Mistake.Typed($"point '{point}' is none that is read", Given.Instead(point, [.. site.Points.Where(p => p.Kind == PointKind.Read).Select(p => p.Tag)], "points.csv has the tags"))];

    private static IEnumerable<Mistake> HowOften(string every) => Typed.Duration(every, Place.Unknown, out var wrong) is { TotalMinutes: >= 5 and <= 1440 } ? []
        : [wrong ?? Mistake.Typed($"every {every} is too short or too long for a check", "5m to 24h")];
}
