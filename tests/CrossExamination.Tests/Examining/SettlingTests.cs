using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

public sealed class SettlingTests
{
    private static readonly Line Two = new(
        [new("flow", Role.Reading, 2), new("lime", Role.Reading, 0.2), new("laboratory", Role.Reading, 0.6), new("heat", Role.Method, 1)], ["row"]);

    [Fact]
    public void The_reading_that_divides_the_shares_best_is_asked_for()
    {
        Assert.Equal(0, Settling.Of(Two, [Suspected(0, 0.45, 15), Suspected(1, 0.4, 1), Suspected(2, 0.15, 3)]));
    }

    [Fact]
    public void An_error_smaller_than_the_readings_own_uncertainty_is_not_worth_a_second_one()
    {
        Assert.Equal(1, Settling.Of(Two, [Suspected(0, 0.45, 0.4), Suspected(1, 0.4, 1), Suspected(2, 0.15, 3)]));
    }

    [Fact]
    public void What_is_nearly_certain_needs_no_second_reading()
    {
        Assert.Null(Settling.Of(Two, [Suspected(0, 0.97, 15), Suspected(1, 0.03, 1)]));
    }

    [Fact]
    public void Methods_alone_cannot_be_read_again()
    {
        Assert.Null(Settling.Of(Two, [Suspected(3, 0.6, 4)]));
        Assert.Null(Settling.Of(Two, []));
    }

    private static Suspect Suspected(int parameter, double share, double bias) =>
        new(new Hypothesis(parameter, [(parameter, 1)], 1, 1, null), share, 1, 10, bias, 0);
}
