using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

public sealed class VerdictTests
{
    [Fact]
    public void Seven_tenths_name_one()
    {
        Assert.Equal((2, 0), Said(Suspected(2, 0.72), Suspected(1, 0.28)));
    }

    [Fact]
    public void Less_gives_the_smallest_group_that_reaches_nine_tenths()
    {
        Assert.Equal([1, 2, 3], Verdict.Of([Suspected(1, 0.5), Suspected(2, 0.3), Suspected(3, 0.15), Suspected(4, 0.05)]).Group);
    }

    [Fact]
    public void A_method_alone_and_with_what_it_moves_is_one_suspect()
    {
        Assert.Equal((9, 0), Said(Suspected(9, 0.4), Moving(9, 0.35, 1, 2), Suspected(1, 0.25)));
    }

    [Fact]
    public void A_method_that_moves_the_named_reading_stands_beside_it()
    {
        var verdict = Verdict.Of([Suspected(1, 0.75), Moving(9, 0.2, 1, 2), Suspected(4, 0.05)]);

        Assert.Equal((1, 9), (verdict.Named, verdict.WithMethod));
    }

    [Fact]
    public void A_method_that_moves_other_readings_is_not_told_beside_it()
    {
        Assert.Null(Verdict.Of([Suspected(1, 0.75), Moving(9, 0.2, 3, 2), Suspected(4, 0.05)]).WithMethod);
    }

    [Fact]
    public void What_chance_explains_about_as_well_is_not_named()
    {
        Suspect[] suspects = [Suspected(2, 0.95), Suspected(1, 0.05)];

        Assert.Equal(2, Verdict.Of(suspects, nothing: 0.2).Named);
        Assert.Null(Verdict.Of(suspects, nothing: 0.3).Named);
        Assert.Equal([2], Verdict.Of(suspects, nothing: 0.3).Group);
    }

    [Fact]
    public void Shares_that_are_no_numbers_name_nothing()
    {
        Assert.Equal(Verdict.Nothing, Verdict.Of([Suspected(1, double.NaN)]));
    }

    private static (int Named, int Others) Said(params Suspect[] suspects)
    {
        var verdict = Verdict.Of(suspects);
        return (verdict.Named ?? -1, verdict.Group.Count);
    }

    private static Suspect Suspected(int parameter, double share) => new(new Hypothesis(parameter, [(parameter, 1)], 1, 1, null), share, 1, 10, 1, 0);

    private static Suspect Moving(int method, double share, params int[] readings) =>
        new(new Hypothesis(method, [.. readings.Select(r => (r, 1.0))], 1, 1, null), share, 1, 10, 1, 0);
}
