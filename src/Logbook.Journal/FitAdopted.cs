namespace Logbook.Journal;

/// <summary>What was learned of the line's own past, and by which entries are cross-examined from then on.</summary>
/// <param name="Line">Names what was compared with what: what was learned of one line is not used for another.</param>
/// <param name="From">The time of the first entry that was learned from.</param>
/// <param name="To">The time of the last.</param>
/// <param name="Entries">How many entries were learned from.</param>
/// <param name="LeftOut">The share of them that the fit itself left out.</param>
/// <param name="Flagged">The share of them that the thresholds would have flagged.</param>
/// <param name="Thresholds">What the physics statistic must exceed, for an error that began now, one or two entries ago.</param>
/// <param name="Subjects">Readings first, then constants and methods.</param>
/// <param name="Places">Rows first, then readings.</param>
/// <param name="Hypotheses">What may be wrong, and what it moves.</param>
/// <param name="Quiet">Covariance while the plant runs as usual: the lower triangle, one row a line.</param>
/// <param name="Changed">The same while the plant is being moved.</param>
/// <param name="Together">How the readings' changes go together: the lower triangle.</param>
public sealed record FitAdopted(
    string Line, DateTimeOffset From, DateTimeOffset To, long Entries, double LeftOut, double Flagged, IReadOnlyList<double> Thresholds,
    IReadOnlyList<FittedSubject> Subjects, IReadOnlyList<FittedPlace> Places, IReadOnlyList<FittedHypothesis> Hypotheses,
    IReadOnlyList<string> Quiet, IReadOnlyList<string> Changed, IReadOnlyList<string> Together, string Why) : RecordBody
{
    public override string Kind => "fit";
}

/// <summary>What may be wrong.</summary>
/// <param name="U">Standard uncertainty that was used.</param>
/// <param name="Change">A reading's usual change from one time to the next; null when it was hardly ever taken, and for anything else.</param>
public sealed record FittedSubject(string Name, double U, double? Change);

/// <summary>What to expect of a row or a reading.</summary>
/// <param name="Mean">Its long mean.</param>
/// <param name="Phi">By how much a deviation from it fades in an hour.</param>
/// <param name="Gain">The share of a surprise that is taken up.</param>
/// <param name="Scale">The usual surprise.</param>
public sealed record FittedPlace(string Name, double Mean, double Phi, double Gain, double Scale);

/// <summary>One thing that may have happened.</summary>
/// <param name="Subject">Place of what would be wrong among the subjects.</param>
/// <param name="Moves">What it moves, by place.</param>
/// <param name="By">How far, for each unit of its size.</param>
/// <param name="Prior">Its weight before any evidence.</param>
/// <param name="Reach">The size to be thought of.</param>
/// <param name="With">The method that looks exactly the same.</param>
public sealed record FittedHypothesis(int Subject, IReadOnlyList<int> Moves, IReadOnlyList<double> By, double Prior, double Reach, int? With)
{
    /// <summary>How far its evidence goes in sound history beside that of the others, for each onset; null in a fit that did not ask.</summary>
    public IReadOnlyList<double>? Chance { get; init; }
}
