using CsCheck;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

public sealed class SpellingTests
{
    [Theory]
    // Optimal string alignment distances; "kitten"/"sitting" 3 is the textbook example of Wagner and Fischer (from memory).
    [InlineData("kitten", "sitting", 3)]
    [InlineData("SL-T1", "sl-t1", 0)]
    [InlineData("SL-1T", "SL-T1", 1)]
    [InlineData("", "abc", 3)]
    public void A_distance_counts_letters_to_change(string one, string other, int distance) =>
        Assert.Equal(distance, Spelling.Distance(one, other));

    [Fact]
    public void A_distance_is_the_same_both_ways_and_zero_only_for_the_same() =>
        Gen.Select(Gen.String[Gen.Char["abc-1"], 0, 8], Gen.String[Gen.Char["abc-1"], 0, 8]).Sample((a, b) =>
            Spelling.Distance(a, b) == Spelling.Distance(b, a) && (Spelling.Distance(a, b) == 0) == (a == b));

    [Fact]
    public void The_nearest_come_first() =>
        Assert.Equal("SL-T1 SL-F1", string.Join(' ', Spelling.Nearest("SL-T", ["RG-T", "WW-L", "SL-F1", "SL-T1"], 2)));

    [Fact]
    public void What_is_far_from_everything_gets_no_offer() => Assert.Empty(Spelling.Nearest("XYZZY", ["SL-T1", "RG-D"]));
}
