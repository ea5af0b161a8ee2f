using CrossExamination.Tests.Plants;
using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

/// <summary>One reading is taken by a row when it is new, and an hour later by another row that looks back.</summary>
public sealed class ExpectedErrorsTests
{
    private static readonly Line Line = new([new("a", Role.Reading, 1), new("b", Role.Reading, 0.1), new("c", Role.Reading, 0.1)], ["a now, b", "a before, c"]);

    [Fact]
    public void An_error_that_a_row_showed_is_no_surprise_in_the_row_that_takes_it_again()
    {
        var fitted = Fit.Learn(Line, Rounds(600));

        Assert.InRange(fitted.Quiet[0, 0], 0.7, 1.3);
        Assert.InRange(fitted.Quiet[1, 1], 0, 0.2);
    }

    [Fact]
    public void Too_little_history_takes_nothing_out()
    {
        var fitted = Fit.Learn(Line, Rounds(40));

        Assert.InRange(fitted.Quiet[1, 1], 0.7, 1.3);
    }

    private static List<Round> Rounds(int count)
    {
        var dice = new Dice(4);
        var before = dice.Normal();
        var rounds = new List<Round>();
        for (var hour = 0; hour < count; hour++)
        {
            double[] read = [dice.Normal(), 0.1 * dice.Normal(), 0.1 * dice.Normal()];
            rounds.Add(new Round(hour, read,
            [
                new RowReading(read[0] - read[1], [new(0, 1, 0), new(1, -1, 0)]),
                new RowReading(before - read[2], [new(0, 1, 1, 1), new(2, -1, 0)]),
            ]));
            before = read[0];
        }

        return rounds;
    }
}
