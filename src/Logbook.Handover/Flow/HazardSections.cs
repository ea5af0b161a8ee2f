using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The sections that the outgoing person declares one by one: silence in them could be read as safe.</summary>
public static class HazardSections
{
    /// <summary>In the order in which they must be read.</summary>
    public static readonly IReadOnlyList<string> All = ["inside", "locked", "defeated", "out", "acid", "gas", "injury", "release"];

    /// <summary>What can be declared, each by its digit.</summary>
    public static readonly IReadOnlyList<string> Answers = ["checked", "not-checked", "change"];

    // Any will do, as long as it is the same: what a section says then changes by records alone, not by the clock.
    private static readonly DateTimeOffset OneTime = DateTimeOffset.UnixEpoch;

    /// <summary>True when what can hurt under this word is declared in that section; what was seen bad may belong to either of two.</summary>
    public static bool Holds(string section, string word) =>
        word == section || (section == "inside" && word == "permit") || (section is "defeated" or "out" && word == "seen");

    /// <summary>What each section says of what is recorded: it differs from what it said before when a record came that changed it, and only then.</summary>
    internal static IReadOnlyDictionary<string, string> Recorded(Site site, State state)
    {
        var hazards = Hazards.Of(site, state, OneTime);
        return All.ToDictionary(name => name, name => string.Join('\n', hazards.Where(h => Holds(name, h.Word)).Select(h => $"{h.Word} {h.Brief}")), StringComparer.Ordinal);
    }

    /// <summary>
    /// Sections that were declared, and of which a record has since changed what they say: the declaration was of something else. One
    /// that was declared as not checked is still not checked.
    /// </summary>
    /// <param name="said">What each said when it was declared.</param>
    /// <param name="says">What each says now.</param>
    public static IReadOnlyList<string> Outdated(IReadOnlyDictionary<string, string> declared, IReadOnlyDictionary<string, string> said, IReadOnlyDictionary<string, string> says) =>
        [.. All.Where(name => Typed(declared, name) is { } answer && Answer(answer) != "not-checked" && said.TryGetValue(name, out var then) && says[name] != then)];

    internal static IReadOnlyDictionary<string, string> Of(IReadOnlyDictionary<string, string> typed) =>
        All.ToDictionary(name => name, name => Answer(Typed(typed, name)!)!, StringComparer.Ordinal);

    /// <summary>What changed, in own words, of each section that is declared as changed; null when none is.</summary>
    internal static IReadOnlyDictionary<string, string>? Changes(IReadOnlyDictionary<string, string> typed) =>
        All.Where(name => Typed(typed, name) is { } answer && Words(answer).Length > 0).ToDictionary(name => name, name => Words(Typed(typed, name)!), StringComparer.Ordinal) is { Count: > 0 } changes ? changes : null;

    internal static IEnumerable<Mistake> Mistakes(IReadOnlyDictionary<string, string> typed)
    {
        foreach (var (name, answer) in typed)
        {
            if (!All.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                yield return Mistake.Typed($"'{name}' is no hazard section", "sections: " + string.Join(", ", All));
            }
            else if (Answer(answer) is null)
            {
                yield return Mistake.Typed($"section {name}: '{answer}' is no declaration", "1 checked, 2 not-checked, 3 change, with what changed: change:WORDS");
            }
            else if (Answer(answer) == "change" && Words(answer).Length == 0)
            {
                yield return Mistake.Typed($"section {name} is declared as changed, and nothing says what changed", $"a few words: --section {name}=change:WORDS");
            }
            else if (Answer(answer) == "change")
            {
                foreach (var mistake in Given.Text(Words(answer), $"what changed in section {name}"))
                {
                    yield return mistake;
                }
            }
        }

        if (All.Where(name => Typed(typed, name) is null).ToList() is { Count: > 0 } missing)
        {
            yield return Mistake.Typed($"not declared: {string.Join(", ", missing)}", "each section as checked, not-checked or change");
        }
    }

    private static string? Typed(IReadOnlyDictionary<string, string> typed, string name) =>
        typed.FirstOrDefault(t => t.Key.Equals(name, StringComparison.OrdinalIgnoreCase)).Value;

    /// <summary>Words stand behind a change alone: <c>change:valve opened</c>.</summary>
    private static string? Answer(string typed)
    {
        var word = typed.Split(':')[0].Trim();
        var answer = word is "1" or "2" or "3" ? Answers[word[0] - '1'] : Answers.FirstOrDefault(a => a.Equals(word, StringComparison.OrdinalIgnoreCase));
        return answer != "change" && typed.Contains(':', StringComparison.Ordinal) ? null : answer;
    }

    private static string Words(string typed) => typed.Contains(':', StringComparison.Ordinal) ? typed[(typed.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim() : "";
}
