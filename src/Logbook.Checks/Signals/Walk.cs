namespace Logbook.Checks.Signals;

/// <summary>One walk of a round, as a row of numbers.</summary>
/// <param name="Shift">Id of the shift.</param>
/// <param name="Values">One value a point, in one order for all walks; null when it was not taken or its equipment stood still.</param>
/// <param name="Seq">The entry.</param>
public sealed record Walk(string Shift, DateTimeOffset At, IReadOnlyList<double?> Values, long Seq);

/// <summary>A walk that has more readings in common with an earlier one than is usual here.</summary>
/// <param name="Equal">How many readings are the same.</param>
/// <param name="Of">Of how many that usually move.</param>
/// <param name="Usual">How many are the same on average at that distance.</param>
/// <param name="MostElsewhere">The most at that distance in any walk of another shift.</param>
/// <param name="Adjusted">Chance of so many or more, corrected for the number of comparisons.</param>
public sealed record SameSignal(Walk Walk, Walk Earlier, int Equal, int Of, double Usual, int MostElsewhere, double Adjusted);

/// <summary>A shift whose readings vary less than is usual here, at several points at once.</summary>
/// <param name="Points">The points that vary less.</param>
/// <param name="Adjusted">Chance of so little variation or less, corrected for the number of shifts.</param>
public sealed record QuietSignal(string Shift, DateTimeOffset At, IReadOnlyList<QuietPoint> Points, double Adjusted);

/// <param name="Column">Which point.</param>
/// <param name="Spread">Standard deviation of the shift's readings.</param>
/// <param name="Usual">The median of that of the other shifts, on the same instrument.</param>
public sealed record QuietPoint(int Column, double Spread, double Usual, int Readings);
