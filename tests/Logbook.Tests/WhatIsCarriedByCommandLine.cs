namespace Logbook.Tests;

/// <summary>Carried items as they are typed: times, owners and the caution that fits what comes.</summary>
public sealed class WhatIsCarriedByCommandLine : IDisposable
{
    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Theory]
    [InlineData("lime-silo", "Burnt lime", "Caustic soda delivered")]
    [InlineData("wl-tank", "Caustic soda delivered", "Burnt lime")]
    [InlineData("ww-tank", "Caustic soda delivered", "Burnt lime")]
    public void The_caution_of_a_delivery_is_that_of_what_goes_there(string on, string caution, string other)
    {
        var answer = _cli.Run("carry", "add", "--kind", "delivery", "--on", on, "--text", "24 t by truck", "--by", "op1");

        Assert.Equal(0, answer.Code);
        Assert.Contains($"CAUTION {caution}:", answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(other, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_delivery_to_nowhere_in_particular_has_both_cautions()
    {
        var answer = _cli.Run("carry", "add", "--kind", "delivery", "--on", "site", "--text", "24 t by truck", "--by", "op1");

        Assert.Contains("CAUTION Burnt lime:", answer.Error, StringComparison.Ordinal);
        Assert.Contains("CAUTION Caustic soda delivered:", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bare_time_that_has_passed_is_the_next_one_as_an_end_and_the_last_one_as_a_begin()
    {
        Assert.Equal(0, _cli.Run("carry", "add", "--kind", "action", "--on", "slaker", "--text", "guard", "--until", "06:00", "--since", "22:40", "--by", "op1").Code); // it is 10:00

        var item = _cli.Run("carry", "list", "--json").Json.GetProperty("carry")[0];
        Assert.StartsWith("2026-11-26T06:00", item.GetProperty("until").GetString(), StringComparison.Ordinal);
        Assert.StartsWith("2026-11-24T22:40", item.GetProperty("since").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run("carry", "confirm", "2", "--until", "05:00", "--by", "op1").Code);
        Assert.StartsWith("2026-11-26T05:00", _cli.Run("carry", "list", "--json").Json.GetProperty("carry")[0].GetProperty("until").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_owner_of_a_lockout_is_changed_and_it_is_said_that_no_lock_moves()
    {
        _cli.Run("carry", "add", "--kind", "isolation", "--on", "mud-pump", "--text", "seal change", "--owner", "op3", "--by", "op1");

        var answer = _cli.Run("carry", "confirm", "2", "--owner", "op1", "--by", "op1");

        Assert.Equal(0, answer.Code);
        Assert.Contains("CAUTION a lock of Operator three, if one is on, stays until it is removed by the site's procedure", answer.Error, StringComparison.Ordinal);
        Assert.Equal("op1", _cli.Run("carry", "list", "--json").Json.GetProperty("carry")[0].GetProperty("owner").GetString());
    }

    [Fact]
    public void A_lock_that_comes_off_while_people_are_inside_says_whose_is_left_and_who_of_them_is_hurt()
    {
        _cli.Run("carry", "add", "--kind", "isolation", "--on", "mud-pump", "--text", "seal change", "--set", "permit=4417", "--set", "points=2", "--by", "op1");
        _cli.Run("carry", "confirm", "2", "--lock", "on", "--by", "op1");
        _cli.Run("carry", "confirm", "2", "--lock", "on", "--by", "op3");
        Assert.Equal(0, _cli.Run("carry", "add", "--kind", "permit", "--on", "mud-pump", "--text", "inspection", "--until", "18:00", "--set", "number=4417", "--set", "inside=2", "--by", "op1").Code);
        Assert.Equal(0, _cli.Run("carry", "add", "--kind", "injury", "--on", "mud-pump", "--text", "burnt hand", "--set", "who=op3", "--by", "op1").Code);

        var answer = _cli.Run("carry", "confirm", "2", "--lock", "off", "--by", "op1");

        Assert.Equal(0, answer.Code);
        Assert.Contains("people inside (#5); locks still recorded: Operator three, HURT (#6)", answer.Error, StringComparison.Ordinal);
    }
}
