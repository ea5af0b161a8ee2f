using System.Collections.Immutable;

namespace Logbook.Screens;

/// <summary>What the holder has said so far on the way to a prepared note. Esc keeps it; another person at the keys ends it.</summary>
/// <param name="Declared">Hazard section to the digit of its declaration.</param>
internal sealed record Giving(ImmutableDictionary<string, int> Declared, ImmutableList<string> IfThen, ImmutableList<string> Words)
{
    public static readonly Giving Nothing = new(ImmutableDictionary<string, int>.Empty, [], []);
}

/// <summary>What the one who takes over has said so far.</summary>
/// <param name="Answers">To the questions, in their order.</param>
/// <param name="First">"I check first ...", in own words.</param>
internal sealed record Taking(ImmutableList<int> Answers, ImmutableList<string> First, string? Reservation, string? Unattended)
{
    public static readonly Taking Nothing = new([], [], null, null);
}
