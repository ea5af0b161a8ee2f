using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Examining;

/// <summary>
/// When the plant was moved: lime by its weigher and by its screw, and the slaker's heat, which follows by its own time. The
/// figures are invented: 10 t/h of lime, cut to 6.
/// </summary>
public sealed class SteadinessTests
{
    private const int Weigher = 0, Screw = 1, Heat = 2;

    private static readonly Line Lime = new([new("weigher", Role.Reading, 0.1), new("screw", Role.Reading, 0.1), new("heat", Role.Reading, 0.2)], ["weigher, screw", "weigher, heat"]);

    // Where the line is steady only chance moves the readings: no correlation is learned.
    private readonly Steadiness _steadiness = new(Lime, new UsualChanges([0.1, 0.1, 0.2], Matrix<double>.Build.DenseIdentity(3)));

    [Fact]
    public void A_move_bears_out_no_later_one()
    {
        var together = Matrix<double>.Build.DenseOfArray(new[,] { { 1, 0.9, 0 }, { 0.9, 1, 0 }, { 0, 0, 1.0 } });
        var steadiness = new Steadiness(Lime, new UsualChanges([0.1, 0.1, 0.2], together));
        steadiness.Heard(Entry(0, 10, 10, 10));
        steadiness.Heard(Entry(1, 10, 6, 10)); // the weigher stood still

        Assert.Empty(steadiness.Heard(Entry(2, 6, 6, 10)).Moved);
    }

    [Fact]
    public void A_move_that_two_readings_bear_out_silences_what_follows_by_its_own_time()
    {
        Heard(0, 10, 10, 10);

        var moved = Heard(1, 6, 6, 9.5);

        Assert.Equal([Weigher, Screw], moved.Moved);
        Assert.NotNull(moved.Rows[0]);
        Assert.Null(moved.Rows[1]);
        Assert.Equal(2, moved.Settled[1]);
    }

    [Fact]
    public void It_speaks_again_when_it_has_followed()
    {
        Heard(0, 10, 10, 10);
        Heard(1, 6, 6, 9.5);

        Assert.Null(Heard(1.5, 6, 6, 7).Rows[1]);
        Assert.NotNull(Heard(2, 6, 6, 6).Rows[1]);
    }

    [Theory]
    [InlineData(6, 10)] // the weigher alone, then the screw alone
    [InlineData(10, 6)]
    [InlineData(6, 14)] // both, against each other
    [InlineData(6, 8)] // both, but not as far
    public void What_no_second_reading_bears_out_is_no_move(double weigher, double screw)
    {
        Heard(0, 10, 10, 10);

        var heard = Heard(1, weigher, screw, 10);

        Assert.Empty(heard.Moved);
        Assert.All(heard.Rows, Assert.NotNull);
    }

    [Fact]
    public void A_move_of_the_usual_size_silences_nothing()
    {
        Heard(0, 10, 10, 10);

        Assert.All(Heard(1, 9.8, 9.8, 9.9).Rows, Assert.NotNull);
    }

    private Round Heard(double hour, double weigher, double screw, double heat) => _steadiness.Heard(Entry(hour, weigher, screw, heat));

    private static Round Entry(double hour, double weigher, double screw, double heat) => new(hour, [weigher, screw, heat],
    [
        new RowReading(weigher - screw, [new(Weigher, 1, 0), new(Screw, -1, 0)]),
        new RowReading(weigher - heat, [new(Weigher, 1, 0), new(Heat, -1, 0)]) { Settles = 1 },
    ]);
}
