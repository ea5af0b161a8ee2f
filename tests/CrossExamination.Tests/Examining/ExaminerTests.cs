using CrossExamination.Tests.Plants;
using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

/// <summary>What an examination says at the edges of what it knows: nothing wrong is ever named for want of evidence.</summary>
public sealed class ExaminerTests
{
    private static readonly SiteRelations Relations = new(0);

    [Fact]
    public void Without_history_physics_alone_finds_a_large_error()
    {
        var plant = new Observed(new EasyPlant(3), Relations);
        var examiner = new Examiner(Thresholds.Learn(Relations.Line, [plant.Next()]));

        var said = examiner.Next(plant.Next(fault: r => r[(int)Tag.WeakWashDensity] += 20));

        Assert.True(said.Gate.Open);
        Assert.Contains(said.Suspects.Take(3), s => s.Parameter == (int)Tag.WeakWashDensity);
    }

    [Fact]
    public void Without_history_a_sound_round_is_not_accused()
    {
        var fitted = Thresholds.Learn(Relations.Line, Rounds(1));

        Assert.All(Enumerable.Range(1, 60), seed => Assert.Equal(Verdict.Nothing, new Examiner(fitted).Next(new Observed(new EasyPlant(seed), Relations).Next()).Verdict));
    }

    [Fact]
    public void Without_a_single_entry_nothing_is_said()
    {
        var examiner = new Examiner(Thresholds.Learn(Relations.Line, []));

        Assert.Equal(Verdict.Nothing, examiner.Next(new Observed(new EasyPlant(3), Relations).Next(fault: r => r[0] += 50)).Verdict);
    }

    [Fact]
    public void Too_little_history_is_said()
    {
        Assert.False(Thresholds.Learn(Relations.Line, Rounds(40)).UsesHistory);
    }

    [Fact]
    public void An_entry_without_any_reading_says_nothing()
    {
        var said = new Examiner(Thresholds.Learn(Relations.Line, [])).Next(new Round(1, Nothing(), new RowReading?[Relations.Line.Rows.Count]));

        Assert.False(said.Gate.Open);
        Assert.Equal(Verdict.Nothing, said.Verdict);
    }

    [Fact]
    public void A_row_that_is_no_number_takes_no_part()
    {
        var round = new Observed(new EasyPlant(3), Relations).Next();
        var broken = round with { Rows = [.. round.Rows.Select(r => r! with { Difference = double.NaN })] };

        Assert.Equal(Verdict.Nothing, new Examiner(Thresholds.Learn(Relations.Line, [])).Next(broken).Verdict);
    }

    [Fact]
    public void A_reading_that_never_changes_is_no_reason_to_accuse_it()
    {
        var rounds = Rounds(300).Select(r => r with { Values = [.. r.Values.Select((v, i) => i == (int)Tag.Grits ? 190 : v)] }).ToList();
        var examiner = new Examiner(Thresholds.Learn(Relations.Line, rounds));

        Assert.DoesNotContain(rounds.TakeLast(50), r => examiner.Next(r).Verdict.Named == (int)Tag.Grits);
    }

    [Fact]
    public void The_same_relation_twice_breaks_nothing()
    {
        var line = new Line(Relations.Line.Parameters, [.. Relations.Line.Rows, Relations.Line.Rows[0]]);
        Round Twice(Round r) => r with { Rows = [.. r.Rows, r.Rows[0]] };
        var examiner = new Examiner(Thresholds.Learn(line, [.. Rounds(300).Select(Twice)]));
        var plant = new Observed(new EasyPlant(9), Relations);

        var said = examiner.Next(Twice(plant.Next(fault: r => r[(int)Tag.GreenDensity] += 40)));

        Assert.Equal((int)Tag.GreenDensity, said.Verdict.Named);
    }

    [Fact]
    public void A_line_without_relations_checks_nothing()
    {
        var line = new Line(Relations.Line.Parameters, []);
        Round Bare(Round r) => r with { Rows = [] };
        var examiner = new Examiner(Thresholds.Learn(line, [.. Rounds(200).Select(Bare)]));

        Assert.Equal(Verdict.Nothing, examiner.Next(Bare(new Observed(new EasyPlant(9), Relations).Next(fault: r => r[0] += 50))).Verdict);
    }

    [Fact]
    public void A_density_is_named_with_the_relation_that_alone_could_move_it()
    {
        var plant = new Observed(new EasyPlant(5), Relations);
        var examiner = new Examiner(Thresholds.Learn(Relations.Line, [.. Enumerable.Range(0, 400).Select(_ => plant.Next())]));

        var verdict = examiner.Next(plant.Next(fault: r => r[(int)Tag.GreenDensity] += 16)).Verdict;

        Assert.Equal((int)Tag.GreenDensity, verdict.Named);
        Assert.Equal(Relations.GreenDensity, verdict.WithMethod);
    }

    [Fact]
    public void A_constant_that_disagrees_with_the_rest_is_told_as_a_standing_disagreement()
    {
        var fitted = Thresholds.Learn(Relations.Line, [.. Rounds(300).Select(r => r with { Rows = [.. r.Rows.Select((row, k) => k == 1 ? row! with { Difference = row.Difference + 3 } : row)] })]);

        Assert.True(fitted.StandingDisagreements[1] > 3);
        Assert.All(fitted.StandingDisagreements.Where((_, k) => k != 1), d => Assert.InRange(d, -1.5, 1.5));
    }

    [Fact]
    public void Shares_add_up_to_one()
    {
        var plant = new Observed(new EasyPlant(5), Relations);
        var examiner = new Examiner(Thresholds.Learn(Relations.Line, [.. Enumerable.Range(0, 300).Select(_ => plant.Next())]));

        var said = examiner.Next(plant.Next(fault: r => r[(int)Tag.WhiteC] += 3));

        Assert.True(said.Gate.Open);
        Assert.Equal(1, said.Suspects.Sum(s => s.Share), 9);
    }

    [Fact]
    public void An_error_that_was_put_right_speaks_against_nothing_afterwards()
    {
        var (plant, examiner) = Learned(5);

        Assert.Equal((int)Tag.WhiteB, examiner.Next(plant.Next(fault: r => r[(int)Tag.WhiteB] += 2)).Verdict.Named);

        Assert.All(Enumerable.Range(0, 5), _ => Assert.False(examiner.Next(plant.Next()).Gate.Open));
    }

    [Fact]
    public void An_error_that_stays_hides_no_other()
    {
        var (plant, examiner) = Learned(5);
        static void Weigher(double[] r) => r[(int)Tag.LimeWeigher] *= 1.15;
        Assert.Equal((int)Tag.LimeWeigher, examiner.Next(plant.Next(fault: Weigher)).Verdict.Named);
        Assert.Equal((int)Tag.LimeWeigher, examiner.Next(plant.Next(fault: Weigher)).Verdict.Named);

        var said = examiner.Next(plant.Next(fault: r =>
        {
            Weigher(r);
            r[(int)Tag.GreenDensity] += 20;
        }));

        Assert.Equal((int)Tag.GreenDensity, said.Verdict.Named);
    }

    [Fact]
    public void Of_two_errors_in_one_entry_none_is_named()
    {
        var (plant, examiner) = Learned(5);

        var verdict = examiner.Next(plant.Next(fault: r =>
        {
            r[(int)Tag.WhiteB] += 3;
            r[(int)Tag.GreenDensity] += 20;
        })).Verdict;

        Assert.True(verdict.Several);
        Assert.Null(verdict.Named);
        Assert.Contains((int)Tag.WhiteB, verdict.Group);
        Assert.Contains((int)Tag.GreenDensity, verdict.Group);
    }

    [Fact]
    public void That_the_plant_really_went_there_explains_a_flow_that_was_turned_down()
    {
        var (plant, examiner) = Learned(5);

        var flow = Flow(examiner.Compare(plant.Next(p => p with { Flow = p.Flow - 60 })));

        var (real, wrong) = (flow.Weight(flow.Real, flow.Hypothesis.Reach), flow.Weight(flow.Wrong, flow.Hypothesis.Reach));
        Assert.True(real > wrong, $"really {real:F1}, wrong {wrong:F1}");
        Assert.True(flow.Evidence < 0, $"evidence {flow.Evidence:F1}");
    }

    [Fact]
    public void That_the_plant_really_went_there_does_not_explain_a_flow_that_only_its_meter_shows()
    {
        var (plant, examiner) = Learned(5);

        var flow = Flow(examiner.Compare(plant.Next(fault: r => r[(int)Tag.GreenFlow] -= 60)));

        Assert.True(flow.Weight(flow.Wrong, flow.Hypothesis.Reach) > flow.Weight(flow.Real, flow.Hypothesis.Reach) + 5);
        Assert.True(flow.RowsSpeak);
    }

    private static Trace Flow(IEnumerable<Trace> compared) =>
        compared.Single(t => t.Hypothesis.Parameter == (int)Tag.GreenFlow && t.Hypothesis.Effects.Count == 1 && t.Onset == 1 && t.Entries == 1);

    /// <summary>An easy line that was learned, and one that examines what comes next.</summary>
    private static (Observed Plant, Examiner Examiner) Learned(int seed)
    {
        var plant = new Observed(new EasyPlant(seed), Relations);
        return (plant, new Examiner(Thresholds.Learn(Relations.Line, [.. Enumerable.Range(0, 400).Select(_ => plant.Next())])));
    }

    private static List<Round> Rounds(int count)
    {
        var plant = new Observed(new EasyPlant(11), Relations);
        return [.. Enumerable.Range(0, count).Select(_ => plant.Next())];
    }

    private static double[] Nothing() => [.. Enumerable.Repeat(double.NaN, Relations.Line.Readings)];
}
