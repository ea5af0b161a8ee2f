namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Examines one entry after the other. Rows convict: nothing is called wrong that a plant which really went there explains as
/// well. History identifies: then the shares of the hypotheses decide, from rows and readings of the last three entries. What
/// was named is taken out of what is judged afterwards.
/// </summary>
internal sealed class Examiner
{
    /// <summary>Evidence of an error counts over so many entries in which a row speaks of it.</summary>
    public const int Onsets = 3;

    /// <summary>Relations are not straight: of a large error so much of its evidence may be left when it is taken out.</summary>
    private const double NotStraight = 0.1;

    private readonly Fitted _fitted;
    private readonly Views _views;
    private readonly Expected _expected;
    private readonly Steadiness _steadiness;
    private readonly Strand _read;
    private List<Found> _found = [];

    // The entries without what was found in them; null while nothing was.
    private Strand? _without;

    public Examiner(Fitted fitted)
    {
        _fitted = fitted;
        _views = new Views(new Factors(fitted.Quiet), new Factors(fitted.Changed));
        _expected = new Expected(fitted, _views.Quiet);
        _steadiness = new Steadiness(fitted.Line, fitted.UsualChanges);
        _read = new Strand(fitted);
    }

    private Examiner(Examiner other)
    {
        (_fitted, _views, _expected, _steadiness) = (other._fitted, other._views, other._expected.Copy(), other._steadiness.Copy());
        (_read, _found, _without) = (other._read.Copy(), other._found.ConvertAll(f => f.Copy()), other._without?.Copy());
    }

    /// <summary>One that goes on from here by itself: what would be said of another next entry.</summary>
    public Examiner Branch() => new(this);

    /// <summary>Takes an entry up and judges it.</summary>
    public Examination Next(Round round)
    {
        Hear(round);
        return Judged() with { Staying = [.. _found.Where(f => f.Stays).Select(f => f.Parameter)] };
    }

    private Examination Judged()
    {
        if (_without is null)
        {
            return Find(_read.Judge());
        }

        var without = _without.Judge();
        var read = _read.Judge();
        if (_found.Exists(f => f.Stays) && read.Verdict.Named is { } named && !_found.Exists(f => f.Parameter == named))
        {
            // More evidence lays the same to another one.
            (_found, _without) = ([], null);
            return Find(read);
        }

        var stays = _found.Exists(f => f.Stays && f.Parameter == read.Verdict.Named);
        return without.Verdict.Named is { } other && !_found.Exists(f => f.Parameter == other) ? Find(without)
            : stays ? read
            : without;
    }

    /// <summary>What this entry compared of each suspicion, nothing being taken out: for learning the thresholds.</summary>
    public IEnumerable<Trace> Compare(Round round)
    {
        Hear(round);
        return _read.Compared().Where(t => t.IsNews);
    }

    private void Hear(Round round)
    {
        var glance = Glance.Of(_fitted, _views, _steadiness.Heard(round), _expected);
        _read.Add(glance);
        _without?.Add(Without(glance, _found));
        if (_found.TrueForAll(f => f.Passed))
        {
            (_found, _without) = ([], null);
        }
    }

    private static Glance Without(Glance glance, List<Found> found) => found.Aggregate(glance, (g, f) => f.Without(g));

    /// <summary>Takes out what is named. Where much is left that it does not explain none is named: two errors at once look like a third.</summary>
    private Examination Find(Examination said)
    {
        if (said.Verdict.Named is not { } named)
        {
            return said;
        }

        List<Found> found = [.. _found.Where(f => f.Parameter != named).Select(f => f.Anew()), new Found(_fitted, said.Suspects.First(s => s.Parameter == named))];
        List<Glance> glances = [.. _read.Glances.Select(g => Without(g, found))];
        var left = new Strand(_fitted, glances).Judge();
        if (!left.Gate.Open || left.Gate.Statistic < NotStraight * said.Gate.Statistic)
        {
            (_found, _without) = (found, new Strand(_fitted, glances).FromHereOn());
            return said;
        }

        return said with
        {
            Suspicion = Suspicion.Together(said.Suspects.Where(s => s.Parameter == named), left.Suspects.Where(s => s.Parameter != named)),
            Verdict = new Verdict(null, null, [named, .. left.Verdict.All.Where(p => p != named)]) { Several = true },
        };
    }
}

/// <summary>What an examination found.</summary>
/// <param name="Gate">Whether anything is wrong at all, by physics alone.</param>
/// <param name="Suspicion">What it may be; nobody when the gate stayed shut.</param>
/// <param name="Verdict">What may be said of it.</param>
/// <param name="Glances">The entries as they were judged, the newest last: without what was found before.</param>
internal sealed record Examination(Gate Gate, Suspicion Suspicion, Verdict Verdict, IReadOnlyList<Glance> Glances)
{
    /// <summary>What was named, in this entry or in one before, and goes on: nothing has denied it. The verdict tells one of them at most.</summary>
    public IReadOnlyList<int> Staying { get; init; } = [];

    /// <summary>The most likely first.</summary>
    public IReadOnlyList<Suspect> Suspects => Suspicion.Suspects;

    /// <summary>The entry: its surprises, and the rows that spoke.</summary>
    public Glance Glance => Glances[^1];
}
