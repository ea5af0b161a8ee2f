namespace Logbook.Checks;

/// <summary>A kind of carried item and what it asks for.</summary>
/// <param name="Fields">Fields that must be given: <c>number</c>.</param>
/// <param name="May">Fields that may be given beside them: <c>inside</c>.</param>
/// <param name="NeedsUntil">True when it is nothing without its end.</param>
public sealed record CarryKind(string Name, IReadOnlyList<string> Fields, IReadOnlyList<string> May, bool NeedsUntil)
{
    // How far a job has come, and who was told, may be said of everything.
    private static readonly string[] Common = ["step", "told"];

    /// <summary>Every name that the kind takes, those that it needs first.</summary>
    public IReadOnlyList<string> Names => [.. Fields, .. May, .. Common];
}

/// <summary>The kinds of carried items. A name that a kind does not take is refused: mistyped, it would be asked for by nobody.</summary>
public static class CarryKinds
{
    public static readonly IReadOnlyList<CarryKind> All =
    [
        new("action", [], [], NeedsUntil: false),
        new("isolation", [], ["permit", "card", "points", "proof"], NeedsUntil: false),
        new("permit", ["number"], ["entry", "inside", "attendant", "gas-test", "isolation"], NeedsUntil: true),
        new("bypass", ["instead", "allowed-by"], ["point", "every"], NeedsUntil: true),
        new("temporary-change", [], ["allowed-by", "instead"], NeedsUntil: true),
        new("out-of-service", [], ["instead"], NeedsUntil: false),
        new("safety-equipment", [], ["instead"], NeedsUntil: false),
        new("wash", [], ["acid", "drain", "tested"], NeedsUntil: false),
        new("transfer", ["from", "to", "stop-level", "watcher"], [], NeedsUntil: false),
        new("delivery", [], ["amount", "from"], NeedsUntil: false),
        new("sample", ["status"], ["number", "result"], NeedsUntil: false),
        new("injury", ["who"], ["now", "first-aid"], NeedsUntil: false),
        new("release", [], ["amount", "to"], NeedsUntil: false),
    ];

    /// <summary>Fields that take one of a few words.</summary>
    public static readonly IReadOnlyDictionary<string, IReadOnlyList<string>> Words =
        new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal) { ["status"] = ["taken", "at the laboratory", "lost"], ["entry"] = ["yes", "no"] };

    public static CarryKind? Find(string name) => All.FirstOrDefault(k => k.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
}
