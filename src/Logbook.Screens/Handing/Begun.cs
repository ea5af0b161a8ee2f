using System.Collections.Immutable;
using System.Globalization;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What the holder has said so far on the way to a prepared note. Esc keeps it; another person at the keys ends it.</summary>
/// <param name="Declared">Hazard section to the digit of its declaration.</param>
internal sealed record Giving(ImmutableDictionary<string, int> Declared, ImmutableList<string> IfThen, ImmutableList<string> Words)
{
    public static readonly Giving Nothing = new(ImmutableDictionary<string, int>.Empty, [], []);

    /// <summary>What changed, in own words, of each section that is declared as changed.</summary>
    public ImmutableDictionary<string, string> Changes { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Hazard section to what it said when it was declared.</summary>
    public ImmutableDictionary<string, string> Said { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Sections that a record has changed since they were declared: each is to be declared anew.</summary>
    public IReadOnlyList<string> Outdated(Facts facts) => HazardSections.Outdated(Typed, Said, facts.Now.Sections);

    /// <summary>The declarations as they would be typed: the digit, of a change with its words.</summary>
    public IReadOnlyDictionary<string, string> Typed =>
        Declared.ToDictionary(d => d.Key, d => d.Value.ToString(CultureInfo.InvariantCulture) + (d.Value == 3 ? $":{Changes.GetValueOrDefault(d.Key)}" : ""), StringComparer.Ordinal);

    /// <summary>Who prepares again begins with the own lines of the first time: none is lost unasked, each can be taken out.</summary>
    public Giving After(Prepared? before, string by) => !IfThen.IsEmpty || !Words.IsEmpty || before is null || !before.By.Equals(by, StringComparison.OrdinalIgnoreCase) ? this
        : this with { IfThen = [.. before.Lines.Take(before.IfThens)], Words = [.. before.Lines.Skip(before.IfThens)] };
}

/// <summary>What the one who takes over has said so far.</summary>
/// <param name="Asked">The questions that were put.</param>
/// <param name="Answers">To the questions, in their order; right ones alone.</param>
/// <param name="First">"I check first ...", in own words.</param>
internal sealed record Taking(ImmutableList<HazardQuestion> Asked, ImmutableList<int> Answers, ImmutableList<string> First, string? Reservation, string? Unattended)
{
    public static readonly Taking Nothing = new([], [], [], null, null);

    /// <summary>What the one who hands over wrote, and the answers to the own questions.</summary>
    public ImmutableList<NoteLine> Told { get; init; } = [];

    /// <summary>What was answered holds for as long as the same is asked: the page was not opened again, and nothing else can hurt.</summary>
    public Taking AskedAlso(IReadOnlyList<HazardQuestion> questions) =>
        Asked.Count == questions.Count && Asked.Zip(questions).All(q => Same(q.First, q.Second)) ? this : this with { Asked = [.. questions], Answers = [] };

    private static bool Same(HazardQuestion one, HazardQuestion other) =>
        (one.About, one.Text, one.Right) == (other.About, other.Text, other.Right) && one.Choices.SequenceEqual(other.Choices, StringComparer.Ordinal);
}
