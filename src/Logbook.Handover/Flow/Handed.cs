using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What became of a step of the handover: a record on the disk, or mistakes in what was given, or the rule that refuses it.</summary>
/// <param name="Refused">One line; null when no rule stood against it.</param>
public sealed record Handed(JournalRecord? Record, IReadOnlyList<Mistake> Mistakes, string? Refused)
{
    /// <summary>A page that must be shown again at once, because an answer did not agree with it.</summary>
    public HandoverPage? Reopened { get; init; }

    /// <summary>What must be said beside it though it was done; null when nothing.</summary>
    public string? Beside { get; init; }

    /// <summary>What is shown to one person alone, and kept nowhere.</summary>
    public IReadOnlyList<NoteLine>? Own { get; init; }

    /// <summary>True when nothing but the signature failed: what was given stands for another try.</summary>
    public bool Unsigned { get; init; }

    internal static Handed Not(string rule) => new(null, [], rule);

    /// <summary>The one way of these steps: what was given, then the rules, then the signature, then the record.</summary>
    internal static Handed Step(Desk desk, string by, Func<IEnumerable<Mistake>> given, Func<string?> rule, Func<RecordBody> body) =>
        Step(desk, by, given, rule, () => (body(), null));

    internal static Handed Step(
        Desk desk, string by, Func<IEnumerable<Mistake>> given, Func<string?> rule, Func<(RecordBody? Body, string? Refused)> signed)
    {
        desk.Follow();
        List<Mistake> mistakes = [.. desk.NotReady];
        if (mistakes.Count == 0)
        {
            mistakes.AddRange(desk.WhyNot(by).Concat(given()));
        }

        if (mistakes.Count > 0)
        {
            return new Handed(null, mistakes, null);
        }

        if (rule() is { } refused)
        {
            return Not(refused);
        }

        var (body, unsigned) = signed();
        return body is null ? Not(unsigned!) with { Unsigned = true } : new Handed(desk.Write(body, desk.Now, desk.Site.FindPerson(by)!.Code), [], null);
    }

    /// <summary>A reason from one of the site's lists, or what is accepted.</summary>
    internal static IEnumerable<Mistake> ReasonFrom(IReadOnlyList<string> reasons, string? typed)
    {
        if (Reason.Find(reasons, typed) is not { } reason)
        {
            yield return Mistake.Typed($"'{typed}' is none of the site's reasons", $"one of {Reason.Offer(reasons)}; more words may follow after a colon");
        }
        else if (Reason.NeedsWords(reason))
        {
            yield return Mistake.Typed(Reason.WordsMissing, $"{reason.TrimEnd(':', ' ')}: and a few words");
        }
    }

    internal static bool Same(string? one, string? other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
