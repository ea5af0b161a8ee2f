using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CsCheck;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

public class PinTests
{
    private static readonly DateTimeOffset Now = SmallLine.At("2026-11-25T06:20-05:00");

    /// <summary>OWASP Password Storage Cheat Sheet, 2023: PBKDF2-HMAC-SHA256 with 600,000 rounds. NIST SP 800-132, 5.1: a salt of 128 bits at least. Both from memory.</summary>
    [Fact]
    public void A_pin_is_kept_as_the_published_advice_asks()
    {
        var kept = PinHash.Of("274951");

        Assert.Equal((600_000, 16, 32), (kept.Rounds, kept.Salt.Length, kept.Hash.Length));
        Assert.Equal(Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes("274951"), kept.Salt, 600_000, HashAlgorithmName.SHA256, 32), kept.Hash);
        Assert.True(kept.Is("274951"));
        Assert.False(kept.Is("274952"));
    }

    /// <summary>
    /// The derivation itself: PBKDF2-HMAC-SHA256 of "password" with "salt", one round (test vectors to RFC 6070 made over to
    /// SHA-256, widely published; from memory).
    /// </summary>
    [Fact]
    public void The_derivation_agrees_with_the_published_vector()
    {
        var kept = new PinHash(1, Encoding.UTF8.GetBytes("salt"), Convert.FromHexString("120fb6cffcf8b32c43e7225256c4f837a86548c92ccc35480805987cb70be17b"));

        Assert.True(kept.Is("password"));
    }

    [Fact]
    public void Two_people_with_one_pin_have_nothing_in_common_in_the_book() =>
        Assert.NotEqual(PinHash.Of("274951", 1).Hash, PinHash.Of("274951", 1).Hash);

    [Fact]
    public void Waits_grow_with_each_wrong_pin_and_end_at_a_quarter_of_an_hour()
    {
        var waits = Enumerable.Range(0, 200).Select(KeptPin.WaitAfter).ToList();

        Assert.Equal([0, 0, 0, 5, 10, 20, 40, 80, 160, 320, 640, 900, 900], waits.Take(13).Select(w => w.TotalSeconds));
        Assert.Equal(waits.Order(), waits);
        Assert.Equal(TimeSpan.FromMinutes(15), waits[^1]);
    }

    [Fact]
    public void After_any_number_of_wrong_pins_and_the_wait_the_right_one_is_right() => Gen.Int[0, 60].Sample(wrong =>
    {
        var pins = With("274951");
        var now = Now;
        for (var i = 0; i < wrong; i++)
        {
            Assert.NotNull(pins.WhyNot("op1", "000111", now));
            now += TimeSpan.FromMinutes(15);
        }

        Assert.Null(pins.WhyNot("op1", "274951", now));
        Assert.Null(pins.WhyNot("op1", "274951", now));
    });

    [Fact]
    public void While_the_wait_runs_the_right_pin_is_not_tried_and_the_wait_does_not_grow()
    {
        var pins = With("274951");
        for (var i = 0; i < 3; i++)
        {
            pins.WhyNot("op1", "000111", Now);
        }

        Assert.Equal("after 3 wrong PINs op1 waits another 5 seconds; saving and emergency relief go on without a PIN", pins.WhyNot("op1", "274951", Now));
        Assert.NotNull(pins.WhyNot("op1", "000111", Now.AddSeconds(4)));
        Assert.Null(pins.WhyNot("op1", "274951", Now.AddSeconds(5)));
    }

    [Fact]
    public void A_clock_that_was_set_back_does_not_lock_anybody_out()
    {
        var pins = With("274951");
        for (var i = 0; i < 3; i++)
        {
            pins.WhyNot("op1", "000111", Now);
        }

        Assert.Null(pins.WhyNot("op1", "274951", Now.AddDays(-400)));
    }

    [Fact]
    public void A_cheaper_hash_is_made_anew_when_its_pin_is_typed()
    {
        var keep = new PinsInMemory();
        new Pins(keep, rounds: 10).Set("op1", "274951");

        var dearer = new Pins(keep, rounds: 20);
        Assert.NotNull(dearer.WhyNot("op1", "000111", Now));
        Assert.Equal(10, keep.Read().Pins["op1"].Pin.Rounds);
        Assert.Null(dearer.WhyNot("op1", "274951", Now));

        Assert.Equal(20, keep.Read().Pins["op1"].Pin.Rounds);
        Assert.Null(dearer.WhyNot("op1", "274951", Now));
    }

    [Theory]
    [InlineData("12345")]
    [InlineData("123456")]
    [InlineData("987654")]
    [InlineData("111111")]
    [InlineData("121212")]
    [InlineData("2749\t51")]
    public void A_pin_that_is_guessed_at_once_is_refused(string weak) => Assert.NotNull(Pins.WhyWeak(weak));

    [Fact]
    public void Waits_block_neither_saving_nor_emergency_relief()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        for (var i = 0; i < 20; i++)
        {
            Relieving.Short(flow.Desk, flow.Sign("000111"), "op2", "bowl");
        }

        Assert.Contains("waits another", Relieving.Short(flow.Desk, flow.Sign(), "op2", "bowl").Refused, StringComparison.Ordinal);
        Assert.True(flow.Line.Record("hourly", "SL-T1=101.0") > 0);
        Assert.NotNull(Relieving.Emergency(flow.Desk, "op2", "1").Record);
    }

    [Fact]
    public void No_record_holds_anything_of_a_pin()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00");
        Assert.NotNull(PeopleChanges.SetPin(flow.Desk, flow.Sign(), "op1", "op1", () => "581937").Record);
        flow.HeldBy("op2");

        var all = string.Join('\n', flow.Desk.Store.Read().Select(r => Encoding.UTF8.GetString(r.Bytes.Span)));
        Assert.DoesNotContain("581937", all, StringComparison.Ordinal);
        Assert.All(flow.Kept.Read().Pins.Values, kept =>
        {
            Assert.DoesNotContain(Convert.ToHexStringLower(kept.Pin.Hash), all, StringComparison.Ordinal);
            Assert.DoesNotContain(Convert.ToHexStringLower(kept.Pin.Salt), all, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void A_reset_needs_a_supervisor_or_an_engineer_and_stands_beside_the_next_signature_alone()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00");
        Assert.Contains("only a supervisor", PeopleChanges.SetPin(flow.Desk, flow.Sign(), "op1", "op2", () => "581937").Refused, StringComparison.Ordinal);
        var reset = PeopleChanges.SetPin(flow.Desk, flow.Sign(), "op1", "sup1", () => "581937").Record!.Seq;
        Assert.Null(flow.Pins.WhyNot("op1", "581937", Now));
        flow.Pins.Set("op1", FlowLine.Pin);

        flow.HeldBy("op1");
        Assert.Equal(reset, ((HandoverAccepted)flow.Desk.Store.Read(flow.Held.Holder!.Seq).First().Body).Signed.Reset);
        var prepared = (HandoverPrepared)flow.Prepare("op1").Record!.Body;
        Assert.Null(prepared.Signed.Reset);
    }

    [Fact]
    public void A_forgotten_pin_is_witnessed_by_a_third_person_and_confirmed_later()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        Handed Accept(string witness) => Accepting.Accept(flow.Desk, flow.Sign(witness: witness), new AcceptRequest("op2", ["pump first"], []));

        Assert.Contains("one PIN would sign both sides", Accept("op1").Refused, StringComparison.Ordinal);
        Assert.Contains("another person", Accept("op2").Refused, StringComparison.Ordinal);
        var seq = Accept("op3").Record!.Seq;

        Assert.Equal("op2", flow.Holder);
        Assert.Contains($"identity of Operator two in (#{seq}) to be confirmed: a witness signed", NowView.Of(flow.Desk).Unfinished, StringComparer.Ordinal);
        Assert.NotNull(PeopleChanges.Confirm(flow.Desk, flow.Sign(), seq, "op2").Record);
        Assert.DoesNotContain(NowView.Of(flow.Desk).Unfinished, line => line.Contains("identity", StringComparison.Ordinal));
    }

    [Fact]
    public void A_closed_person_writes_no_more_and_keeps_the_name()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        Assert.Contains("holds the line", PeopleChanges.Close(flow.Desk, flow.Sign(), "op1", "sup1", "left the mill").Refused, StringComparison.Ordinal);
        flow.HandedTo("op2");
        Assert.NotNull(PeopleChanges.Close(flow.Desk, flow.Sign(), "op1", "sup1", "left the mill").Record);

        Assert.Equal("op1 is closed and writes no more; use your own code", Assert.Single(Checks.Writing.Remark(flow.Desk, "hello", null, null, "op1").Mistakes).ToString());
        Assert.Single(Checks.RecordEntry.Run(flow.Desk, new Checks.EntryRequest("op1", [SmallLine.Typed("SL-T1=101.0")])).Mistakes);
        Assert.Single(Relieving.Emergency(flow.Desk, "op1", "1").Mistakes);
        Assert.Contains("Operator one", HandoverNote.Of(flow.Desk, flow.Desk.Now).Gave, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_signature_says_in_its_record_what_it_means()
    {
        using var flow = SignedNight.Write();
        var hazard = flow.Line.Carry("safety-equipment", "slaker", "eyewash: no flow");
        Assert.NotNull(SignedWriting.Close(flow.Desk, flow.Sign(), new CarryClosed(hazard, "flow is back, tried by me"), "op3").Record);

        var said = flow.Desk.Store.Read().Select(r => JsonDocument.Parse(r.Bytes).RootElement)
            .Where(r => r.GetProperty("body").TryGetProperty("signed", out _))
            .Select(r => (r.GetProperty("kind").GetString(), Signed: r.GetProperty("body").GetProperty("signed")))
            .Select(r => $"{r.Item1} {r.Signed.GetProperty("how").GetString()}: {r.Signed.GetProperty("means").GetString()}").Distinct(StringComparer.Ordinal).ToList();

        Assert.Contains("handover-relief none: hold the line at once, without a PIN; what I have not read I still have to open", said, StringComparer.Ordinal);
        Assert.Contains("handover-countersigned pin: looked at it with those who were there; not a finding about anyone", said, StringComparer.Ordinal);
        Assert.Contains("handover-prepared pin: prepared; told as far as I know it", said, StringComparer.Ordinal);
        Assert.Contains(said, words => words.StartsWith("handover-accepted pin: read, asked, hold the line; I do not vouch for readings I did not take", StringComparison.Ordinal));
        Assert.Contains("carry-close pin: know that it is over: seen by me, or told by who ended it", said, StringComparer.Ordinal);
    }

    private static Pins With(string pin)
    {
        var pins = new Pins(new PinsInMemory(), rounds: 1);
        pins.Set("op1", pin);
        return pins;
    }
}
