using System.Runtime.InteropServices;

namespace Logbook.Checks.CrossExamination;

/// <summary>One entry, scaled and weighed under each view of it; kept while it may still be evidence.</summary>
internal sealed class Glance
{
    private readonly List<Spoken>[] _spoken;

    private Glance(Line line, Round round, Views views, int[] rows, int[] all, int[] speaking, double[] scaled)
    {
        (Round, Speaking) = (round, speaking);
        _spoken = [.. line.Parameters.Select(_ => new List<Spoken>())];
        foreach (var k in rows)
        {
            foreach (var s in round.Rows[k]!.Sensitivities)
            {
                _spoken[s.Parameter].Add(new Spoken(k, s.Slope, round.Hours - s.HoursBack));
            }
        }

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
        e.Parameter < Round.Values.Count ? double.IsFinite(Round.Values[e.Parameter]) : _spoken[e.Parameter].Count > 0);

    /// <summary>How far a hypothesis that began at an hour moves each place in this entry, for each unit of its size.</summary>
    public double[] Effects(Hypothesis hypothesis, double since)
    {
        var effects = new double[Surprises.Length];
        foreach (var (parameter, by) in hypothesis.Effects)
        {
            if (parameter < Round.Values.Count)
            {
                effects[Round.Rows.Count + parameter] += by;
            }

            foreach (var s in _spoken[parameter])
            {
                effects[s.Row] += s.Taken >= since - 1e-6 ? s.Slope * by : 0;
            }
        }

        return effects;
    }

    /// <summary>Takes the entry up into what is expected and keeps how far it was from it.</summary>
    public static Glance Of(Fitted fitted, Views views, Round round, Standing standing)
    {
        var rows = Places.Speaking(fitted.Line, round, readingsToo: false);
        var all = Places.Speaking(fitted.Line, round, readingsToo: fitted.UsesHistory);
        var scaled = new double[fitted.Line.Width];
        var speaking = Places.Speaking(fitted.Line, round, readingsToo: true);
        foreach (var p in speaking)
        {
            scaled[p] = standing.Surprise(p, Places.Value(fitted.Line, round, p), round.Hours) / fitted.Scale[p];
        }

        return new Glance(fitted.Line, round, views, rows, all, speaking, scaled);
    }

    /// <summary>That a row takes a parameter, how it moves with it, and when the value was taken.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Spoken(int Row, double Slope, double Taken);
}
