using Logbook.Checks.Signals;
using Logbook.Operators;

namespace Logbook.Checks.Tests;

/// <summary>The signals on operators that are simulated by code of their own, which shares nothing with the detectors.</summary>
public sealed class SignalTests
{
    [Fact]
    public void Many_p_values_are_adjusted_as_Benjamini_and_Hochberg_did()
    {
        // Worked by hand from the rule of Benjamini and Hochberg (1995): the rank-th smallest times n over its rank, made monotone from the largest down.
        double[] p = [0.0004, 0.009, 0.012, 0.03, 0.2, 0.45, 0.6, 0.8];

        Assert.Equal([0.0032, 0.032, 0.032, 0.06, 0.32, 0.6, 0.6857, 0.8], ManyTests.Adjusted(p).Select(a => Math.Round(a, 4)));
        Assert.Equal([0.0032, 0.036], ManyTests.Adjusted([0.0004, 0.009], 8).Select(a => Math.Round(a, 4)));
    }

    [Fact]
    public void Readings_that_do_not_go_together_count_as_the_binomial_does()
    {
        // 6 or more of 8 at p = 0.14, the binomial tail by hand: 28 p^6 q^2 + 8 p^7 q + p^8.
        const double p = 0.14;
        var byHand = (28 * Math.Pow(p, 6) * Math.Pow(1 - p, 2)) + (8 * Math.Pow(p, 7) * (1 - p)) + Math.Pow(p, 8);

        Assert.Equal(byHand, new Clustered(0).AtLeast(6, 8, p), 0.02 * byHand);
        Assert.True(new Clustered(0.2).AtLeast(6, 8, p) > 5 * byHand);
    }

    [Fact]
    public void A_copied_walk_is_found_with_the_walk_that_it_copies()
    {
        var month = new SimulatedMonth(Manner.Honest, 11);
        var walks = month.Walks.ToList();
        walks[500] = walks[500] with { Values = walks[497].Values };

        var found = SameAsEarlier.Find(walks, SimulatedMonth.From);

        var signal = Assert.Single(found);
        Assert.Equal((walks[500].Seq, walks[497].Seq), (signal.Walk.Seq, signal.Earlier.Seq));
        Assert.Equal(signal.Of, signal.Equal);
        Assert.True(signal.Usual < signal.Of / 2.0 && signal.MostElsewhere < signal.Of);
    }

    [Fact]
    public void A_walk_before_the_stretch_that_is_asked_for_is_history_alone()
    {
        var walks = new SimulatedMonth(Manner.Honest, 11).Walks.ToList();
        walks[500] = walks[500] with { Values = walks[497].Values };

        Assert.Empty(SameAsEarlier.Find(walks, walks[501].At));
    }

    [Fact]
    public void A_shift_of_small_nudges_varies_less_and_says_how_much_is_usual()
    {
        var month = new SimulatedMonth(Manner.Honest, 21);
        var walks = month.Walks.ToList();
        // A shift in the middle of the month with the plant running: each reading within one step of the first walk's.
        var shift = walks.GroupBy(w => w.Shift, StringComparer.Ordinal).Skip(20).First(g => g.All(w => w.Values.Count(v => v is null) < 3)).ToList();
        for (var i = 1; i < shift.Count; i++)
        {
            var nudge = i % 2;
            var values = shift[0].Values.Select((v, p) => v + (nudge * month.Resolutions[p])).ToList();
            walks[walks.FindIndex(w => w.Seq == shift[i].Seq)] = shift[i] with { Values = values };
        }

        var signal = Assert.Single(VariesLess.Find(walks, month.Resolutions, SimulatedMonth.From));

        Assert.Equal(shift[0].Shift, signal.Shift);
        Assert.All(signal.Points, p => Assert.True(p.Spread < p.Usual / 2));
    }

    [Fact]
    public void Copying_is_caught_mostly_and_honest_months_hardly_ever()
    {
        // Fixed seeds: the numbers of the table that `tests/Benchmarks -- audit` prints, on fewer months.
        Assert.True(Measured.Of(Manner.Copies, 12, 5).Either > 0.8);
        var honest = Measured.Of(Manner.Honest, 25, 5);
        Assert.True(honest.Either + honest.Others <= 0.05);
    }

    /// <summary>A field round is walked first and typed in one go, a sheet is pasted at once: how fast something came in is no signal.</summary>
    [Theory]
    [InlineData((int)Manner.Honest)]
    [InlineData((int)Manner.Copies)]
    public void The_pace_of_typing_changes_no_signal(int manner)
    {
        var month = new SimulatedMonth((Manner)manner, 11);
        var ends = month.Walks.GroupBy(w => w.Shift, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(w => w.At), StringComparer.Ordinal);
        var atOnce = month.Walks.Select(w => w with { At = ends[w.Shift] }).ToList();

        Assert.Equal(
            SameAsEarlier.Find(month.Walks, SimulatedMonth.From).Select(s => (s.Walk.Seq, s.Earlier.Seq)).Order(),
            SameAsEarlier.Find(atOnce, SimulatedMonth.From).Select(s => (s.Walk.Seq, s.Earlier.Seq)).Order());
        Assert.Equal(
            VariesLess.Find(month.Walks, month.Resolutions, SimulatedMonth.From).Select(s => s.Shift),
            VariesLess.Find(atOnce, month.Resolutions, SimulatedMonth.From).Select(s => s.Shift), StringComparer.Ordinal);
    }

    [Fact]
    public void What_is_typed_up_later_from_a_sheet_is_not_flagged()
    {
        Assert.Equal(0, Measured.Of(Manner.TypesUpLater, 15, 5).Either);
    }
}
