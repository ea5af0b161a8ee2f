namespace Logbook.Checks.CrossExamination;

/// <summary>One entry, scaled and in independent units under each view of it; kept while it may still be evidence.</summary>
internal sealed class Glance
{
    private readonly bool[] _spokenOf;

    private Glance(Line line, Round round, Standing before, Views views, int[] rows, int[] all, int[] speaking, double[] scaled)
    {
        Round = round;
        Speaking = speaking;
        _spokenOf = new bool[line.Parameters.Count];
        foreach (var s in round.Rows.OfType<RowReading>().SelectMany(r => r.Sensitivities))
        {
            _spokenOf[s.Parameter] = true;
        }

        Before = before;
        Surprises = Enumerable.Repeat(double.NaN, line.Width).ToArray();
        foreach (var p in speaking)
        {
            Surprises[p] = scaled[p];
        }

        Physics = View.Of(views.Quiet, rows, scaled);
        Quiet = View.Of(views.Quiet, all, scaled);
        Changed = View.Of(views.Changed, all, scaled);
    }

    public Round Round { get; }

    /// <summary>The places at which this entry has something to say.</summary>
    public int[] Speaking { get; }

    /// <summary>What was expected before this entry.</summary>
    public Standing Before { get; }

    /// <summary>How far each place was from what was expected, scaled; NaN where nothing spoke.</summary>
    public double[] Surprises { get; }

    /// <summary>The rows alone.</summary>
    public View? Physics { get; }

    /// <summary>Rows and readings, the plant as usual.</summary>
    public View? Quiet { get; }

    /// <summary>Rows and readings, the plant being moved.</summary>
    public View? Changed { get; }

    /// <summary>True when the entry has a reading that the hypothesis moves, or a row that speaks of the constant or method.</summary>
    public bool Has(Hypothesis hypothesis) => hypothesis.Effects.Any(e =>
        e.Parameter < Round.Values.Count ? double.IsFinite(Round.Values[e.Parameter]) : _spokenOf[e.Parameter]);

    /// <summary>Takes the entry up into what is expected and keeps how far it was from it.</summary>
    public static Glance Of(Fitted fitted, Views views, Round round, Standing standing)
    {
        var before = standing.Copy();
        var rows = Places.Speaking(fitted.Line, round, readingsToo: false);
        var all = Places.Speaking(fitted.Line, round, readingsToo: fitted.UsesHistory);
        var scaled = new double[fitted.Line.Width];
        var speaking = Places.Speaking(fitted.Line, round, readingsToo: true);
        foreach (var p in speaking)
        {
            scaled[p] = standing.Surprise(p, Places.Value(fitted.Line, round, p), round.Hours) / fitted.Scale[p];
        }

        return new Glance(fitted.Line, round, before, views, rows, all, speaking, scaled);
    }
}

/// <summary>The covariances in use.</summary>
internal sealed record Views(Factors Quiet, Factors Changed);

/// <summary>Some places of one entry in independent units.</summary>
internal sealed record View(IReadOnlyList<int> Places, Factor Factor, double[] White)
{
    /// <summary>The logarithm of how likely the surprises are when nothing is wrong, but for a constant.</summary>
    public double Base { get; } = -(Factor.LogDeterminant / 2) - (Factor.Dot(White, White) / 2);

    /// <returns>Null when nothing speaks, or the covariance of what speaks is singular.</returns>
    public static View? Of(Factors factors, int[] places, double[] scaled) =>
        places.Length > 0 && factors.Of(places) is { } factor ? new View(places, factor, factor.Whiten([.. places.Select(p => scaled[p])])) : null;

    /// <summary>How a hypothesis matches the surprises.</summary>
    /// <param name="trace">What it does to every place, scaled.</param>
    public Tried Try(double[] trace)
    {
        var white = Factor.Whiten([.. Places.Select(p => trace[p])]);
        return new Tried(Factor.Dot(white, White), Factor.Dot(white, white));
    }
}
