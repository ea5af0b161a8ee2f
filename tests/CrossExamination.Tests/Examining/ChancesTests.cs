using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Examining;

/// <summary>How far suspicions reach by chance, and what moves together. Figures invented; the expected ones by hand.</summary>
public sealed class ChancesTests
{
    private static readonly Hypothesis[] Two = [new(0, [(0, 1)], 1, 1, null), new(1, [(1, 1)], 1, 1, null)];

    [Fact]
    public void One_that_reaches_twice_as_far_in_sound_history_is_held_against_more()
    {
        var chances = Chances.Of(Two, [.. Even(400).Select(v => new Reached[] { new(0, 1, v), new(1, 1, 2 * v) })]);

        // Forty values of the tail and thirty of the typical one, 1.5: (40 x 1 + 30 x 1.5) / 70 / 1.5 and (40 x 2 + 30 x 1.5) / 70 / 1.5.
        Assert.Equal(85.0 / 105, chances[0].Chance[0], 9);
        Assert.Equal(125.0 / 105, chances[1].Chance[0], 9);
    }

    [Fact]
    public void Of_what_was_hardly_ever_compared_nothing_is_known()
    {
        var chances = Chances.Of(Two, [.. Even(40).Select(v => new Reached[] { new(0, 1, v) })]);

        Assert.All(chances, h => Assert.Equal([1, 1, 1], h.Chance));
    }

    [Fact]
    public void What_never_reached_anything_is_held_against_the_usual()
    {
        var chances = Chances.Of(Two, [.. Even(400).Select(_ => new Reached[] { new(0, 1, 0), new(1, 1, 0) })]);

        Assert.All(chances, h => Assert.Equal([1, 1, 1], h.Chance));
    }

    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(0.8, 1, 0.8)] // the one that no row shows follows the other as far as it usually does
    public void Readings_that_a_method_moves_go_together_as_they_usually_do(double correlation, double first, double second)
    {
        var line = new Line(
            [new("A", Role.Reading, 1), new("B", Role.Reading, 1), new("method", Role.Method, 1) { Moves = [0, 1] }], ["A, method"]);
        var scaled = Matrix<double>.Build.DenseOfArray(new double[,] { { 1, 0, 1 } });
        var together = Matrix<double>.Build.DenseOfArray(new[,] { { 1, correlation }, { correlation, 1 } });

        var moved = Moved.Of(line, scaled, [1, 1], together)[2].ToDictionary(m => m.Parameter, m => m.By);

        Assert.Equal(first, moved.GetValueOrDefault(0), 4);
        Assert.Equal(second, moved.GetValueOrDefault(1), 4);
    }

    private static IEnumerable<double> Even(int count) => Enumerable.Range(1, count).Select(i => (double)i);
}
