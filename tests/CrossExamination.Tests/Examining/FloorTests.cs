using CrossExamination.Tests.Plants;

namespace CrossExamination.Tests.Examining;

/// <summary>
/// What the examination must reach on simulated lines that it was not developed on. No source: the simulators are ours. An
/// entry counts from the first one in which the wrong value is compared with anything.
/// </summary>
public sealed class FloorTests
{
    /// <summary>Apart from the seeds that the method was tried on while it was made.</summary>
    private static readonly int[] Seeds = [50_021];

    private static readonly Lazy<Evaluation> Easy = new(() => Evaluation.Run(s => new EasyPlant(s), 0, Seeds, 16, 600));

    private static readonly Lazy<Evaluation> Hard = new(() => Evaluation.Run(s => new HardPlant(s), 2, Seeds, 16, 600));

    [Fact]
    public void On_the_easy_line_most_wrong_readings_are_named_at_once() => AtLeast(60, e => e.All.First, Easy);

    [Fact]
    public void On_the_easy_line_the_group_holds_the_wrong_reading() => AtLeast(98, e => e.All.InGroup, Easy);

    [Fact]
    public void On_the_easy_line_a_plant_that_is_moved_is_hardly_ever_accused() => AtMost(5, e => Steps.Sum(e.Keeping.Values).Any, Easy);

    [Fact]
    public void On_the_easy_line_a_broken_relation_is_hardly_ever_laid_to_a_reading_alone() => AtMost(5, e => Steps.Sum(e.Breaking.Values).Any, Easy);

    [Fact]
    public void On_the_hard_line_a_plant_that_is_moved_is_hardly_ever_accused() => AtMost(5, e => Steps.Sum(e.Keeping.Values).Any, Hard);

    [Fact]
    public void On_the_hard_line_a_broken_relation_is_hardly_ever_laid_to_a_reading_alone() => AtMost(5, e => Steps.Sum(e.Breaking.Values).Any, Hard);

    /// <summary>The aim at the first entry; later less than what was reached when this was written (74.7 and 97.9), for so few trials; the aims are 74 and 98.</summary>
    [Fact]
    public void On_the_hard_line_as_many_are_named_as_when_this_was_written()
    {
        AtLeast(48, e => e.All.First, Hard);
        AtLeast(70, e => e.All.Third, Hard);
        AtLeast(96, e => e.All.NamesRight, Hard);
    }

    /// <summary>The aim is 2.5 in 100; so few entries lie within one and a half of what more of them would show.</summary>
    [Fact]
    public void Few_sound_entries_are_flagged()
    {
        AtMost(4, e => e.CleanFlagged, Easy);
        AtMost(4, e => e.CleanFlagged, Hard);
    }

    private static void AtLeast(double floor, Func<Evaluation, double> of, Lazy<Evaluation> measured) =>
        Assert.True(of(measured.Value) >= floor, Tables.Of("below the floor", measured.Value));

    private static void AtMost(double ceiling, Func<Evaluation, double> of, Lazy<Evaluation> measured) =>
        Assert.True(of(measured.Value) <= ceiling, Tables.Of("above the ceiling", measured.Value));
}
