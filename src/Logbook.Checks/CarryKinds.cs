namespace Logbook.Checks;

/// <summary>A kind of carried item and what it asks for.</summary>
/// <param name="Fields">Fields that must be given: <c>number</c>.</param>
/// <param name="NeedsUntil">True when it is nothing without its end.</param>
public sealed record CarryKind(string Name, IReadOnlyList<string> Fields, bool NeedsUntil);

/// <summary>The kinds of carried items. Other fields than those asked for may be given beside them.</summary>
public static class CarryKinds
{
    public static readonly IReadOnlyList<CarryKind> All =
    [
        new("action", [], NeedsUntil: false),
        new("isolation", [], NeedsUntil: false),
        new("permit", ["number"], NeedsUntil: true),
        new("bypass", ["instead"], NeedsUntil: true),
        new("temporary-change", [], NeedsUntil: true),
        new("out-of-service", [], NeedsUntil: false),
        new("safety-equipment", [], NeedsUntil: false),
        new("wash", [], NeedsUntil: false),
        new("transfer", ["from", "to", "stop-level", "watcher"], NeedsUntil: false),
        new("delivery", [], NeedsUntil: false),
        new("sample", ["status"], NeedsUntil: false),
    ];

    /// <summary>Fields that take one of a few words.</summary>
    public static readonly IReadOnlyDictionary<string, IReadOnlyList<string>> Words =
        new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal) { ["status"] = ["taken", "at the laboratory", "lost"] };

    public static CarryKind? Find(string name) => All.FirstOrDefault(k => k.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
}
