using System.Runtime.InteropServices;

namespace Logbook.Checks.CrossExamination;

/// <summary>One entry, scaled and weighed under each view of it; kept while it may still be evidence.</summary>
internal sealed class Glance
{
    /// <summary>Hours are told apart to a few thousandths of a second.</summary>
    private const double Moment = 1e-6;

    private readonly Fitted _fitted;
    private readonly Views _views;
    private readonly List<Spoken>[] _spoken;
    private readonly double[] _surprises;

    private Glance(Fitted fitted, Round round, Views views, Heard heard, double[] surprises, List<Spoken>[]? spoken = null)
    {
        (_fitted, Round, _views, Heard, _surprises) = (fitted, round, views, heard, surprises);
        _spoken = spoken ?? Said(fitted, round, heard);
        Surprises = Enumerable.Repeat(double.NaN, fitted.Line.Width).ToArray();
        foreach (var p in heard.All)
        {
            Surprises[p] = surprises[p];
        }

        var all = fitted.UsesHistory ? heard.All : heard.Rows;
        Physics = View.Of(views.Quiet, heard.Rows, surprises);
        Quiet = View.Of(views.Quiet, all, surprises);
        Changed = View.Of(views.Changed, all, surprises);
        Sound = Likely.Either(Usual, Moved);
    }

    public Round Round { get; }

    /// <summary>What was listened to in it.</summary>
    public Heard Heard { get; }

    /// <summary>How far each place was from what was expected, scaled; NaN where nothing spoke.</summary>
    public double[] Surprises { get; }

    /// <summary>The rows alone.</summary>
    public View? Physics { get; }

    /// <summary>Rows and readings, the plant as usual.</summary>
    public View? Quiet { get; }

    /// <summary>Rows and readings, the plant being moved.</summary>
    public View? Changed { get; }

    /// <summary>The logarithm of how likely the entry is with nothing wrong in it and the plant as usual, but for a constant.</summary>
    public double Usual => Quiet?.Base ?? 0;

    /// <summary>The same, the plant being moved.</summary>
    public double Moved => Changed?.Base ?? 0;

    /// <summary>The same, whichever of the two it is.</summary>
    public double Sound { get; }

    /// <summary>True when the entry has a reading that the hypothesis moves, or a row that speaks of the constant or method.</summary>
    public bool Has(Hypothesis hypothesis) => hypothesis.Effects.Any(e =>
        e.Parameter < Round.Values.Count ? double.IsFinite(Round.Values[e.Parameter]) : _spoken[e.Parameter].Count > 0);

    /// <summary>How far a hypothesis moves each place in this entry, for each unit of its size: by what was taken from one hour on, before another.</summary>
    /// <param name="effects">Takes them.</param>
    public void Effects(Hypothesis hypothesis, double since, double until, Span<double> effects)
    {
        bool Wrong(double taken) => taken >= since - Moment && taken < until - Moment;
        effects.Clear();
        foreach (var (parameter, by) in hypothesis.Effects)
        {
            if (parameter < Round.Values.Count)
            {
                effects[Round.Rows.Count + parameter] += Wrong(Round.Hours) ? by : 0;
            }

            foreach (var s in _spoken[parameter])
            {
                effects[s.Row] += Wrong(s.Taken) ? s.Slope * by : 0;
            }
        }
    }

    /// <summary>The entry as it would be without something of this size that moves its places so far for each unit, scaled.</summary>
    public Glance Less(ReadOnlySpan<double> moved, double size)
    {
        var surprises = new double[moved.Length];
        for (var p = 0; p < surprises.Length; p++)
        {
            surprises[p] = _surprises[p] - (size * moved[p]);
        }

        return new Glance(_fitted, Round, _views, Heard, surprises, _spoken);
    }

    /// <summary>Takes the entry up into what is expected and keeps how far it was from it.</summary>
    public static Glance Of(Fitted fitted, Views views, Round round, Expected expected)
    {
        var (heard, surprises) = expected.Take(round);
        return new Glance(fitted, round, views, heard, surprises);
    }

    private static List<Spoken>[] Said(Fitted fitted, Round round, Heard heard)
    {
        List<Spoken>[] spoken = [.. fitted.Line.Parameters.Select(_ => new List<Spoken>())];
        foreach (var k in heard.Rows)
        {
            foreach (var s in round.Rows[k]!.Sensitivities)
            {
                spoken[s.Parameter].Add(new Spoken(k, s.Slope, round.Hours - s.HoursBack));
            }
        }

        return spoken;
    }

    /// <summary>That a row takes a parameter, how it moves with it, and when the value was taken.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Spoken(int Row, double Slope, double Taken);
}
