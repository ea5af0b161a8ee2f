using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What a carried item must say before it is worth carrying.</summary>
internal static class CarriedCheck
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
            .. item.Owner is { } owner ? Given.Person(site, owner) : [],
        ];
    }

    private static IEnumerable<Mistake> OfKind(CarryKind kind, Carry item)
    {
        if (kind.NeedsUntil && item.Until is null)
        {
            yield return Mistake.Typed($"a {kind.Name} needs its end", "--until TIME");
        }

        foreach (var field in kind.Fields)
        {
            var given = item.Fields.GetValueOrDefault(field);
            var words = CarryKinds.Words.GetValueOrDefault(field);
            if (string.IsNullOrWhiteSpace(given))
            {
                yield return Mistake.Typed($"a {kind.Name} needs '{field}'", $"--set {field}={(words is null ? "VALUE" : string.Join("|", words))}");
            }
            else if (words is not null && !words.Contains(given, StringComparer.OrdinalIgnoreCase))
            {
                yield return Mistake.Typed($"'{given}' is no {field} of a {kind.Name}", "accepted: " + string.Join(", ", words));
            }
        }
    }
}
