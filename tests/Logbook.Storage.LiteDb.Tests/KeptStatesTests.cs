using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>States kept beside the records: a shorter way to what replay says, and never anything else.</summary>
public sealed class KeptStatesTests : IDisposable
{
    private const int Records = 700;

    private readonly TemporarySite _site = new();

    public KeptStatesTests()
    {
        using var journal = _site.Open();
        var state = State.Empty;
        for (var i = 1; i <= Records; i++)
            state = state.Apply(journal.Append(Drafts.Entry(Drafts.Morning.AddMinutes(i), $"SL-T1={i}"))).KeptNowAndThen(journal);
    }

    public void Dispose() => _site.Dispose();

    [Fact]
    public void A_replay_begins_at_the_newest_state_that_was_kept()
    {
        var journal = _site.Open();

        Assert.Equal((512, 256, 0), (journal.Snapshot().Head.Seq, journal.Snapshot(300).Head.Seq, journal.Snapshot(255).Head.Seq));
        Assert.Equal(Whole(journal), StateForm.Write(Replay.Forward(journal, State.Empty)));
        Assert.True(journal.Verify().Ok, journal.Verify().Why);
    }

    [Fact]
    public void The_past_is_what_a_replay_up_to_it_says()
    {
        var journal = _site.Open();

        Assert.Equal("300", Replay.UpTo(journal, 300).Latest["SL-T1"].Typed);
        Assert.Equal("100", Replay.AsOf(journal, Drafts.Morning.AddMinutes(100)).Latest["SL-T1"].Typed);
        Assert.Equal("600", Replay.AsOf(journal, Drafts.Morning.AddMinutes(600)).Latest["SL-T1"].Typed);
    }

    [Fact]
    public void Dropped_states_are_built_again_by_whoever_looks()
    {
        var journal = _site.Open();
        var whole = Whole(journal);
        Directory.Delete(_site.File("states"), recursive: true);

        Assert.Equal(whole, StateForm.Write(Replay.Forward(journal, State.Empty)));
        Assert.Equal(512, _site.Open("other").Snapshot().Head.Seq);
    }

    [Fact]
    public void A_torn_state_or_one_of_another_build_is_passed_over()
    {
        var path = Path.Combine(_site.File("states"), "512.json");
        var sound = File.ReadAllBytes(path);

        File.WriteAllBytes(path, sound[..^100]);
        Assert.Equal(256, _site.Open().Snapshot().Head.Seq);
        File.WriteAllBytes(path, [(byte)(sound[0] ^ 1), .. sound[1..]]);
        Assert.Equal(256, _site.Open().Snapshot().Head.Seq);
    }

    [Fact]
    public void A_state_of_another_chain_is_passed_over()
    {
        using var other = new TemporarySite();
        using (var journal = other.Open())
        {
            for (var i = 1; i <= 600; i++)
                journal.Append(Drafts.Of(new Remark($"{i}", null, null)));
        }

        Directory.CreateDirectory(other.File("states"));
        File.Copy(Path.Combine(_site.File("states"), "512.json"), Path.Combine(other.File("states"), "512.json"));

        Assert.Equal(State.Empty, other.Open().Snapshot());
    }

    [Fact]
    public void A_state_that_somebody_made_up_is_found_by_verification()
    {
        // Whoever can write the folder can seal a state of their own: the chain stays sound, but the screen would lie.
        var journal = _site.Open();
        var lie = Replay.UpTo(journal, 512) with { Latest = State.Empty.Latest };
        new KeptStates(_site.File("states")).Keep(lie);

        var check = journal.Verify();

        Assert.Equal(512, check.FirstBad);
        Assert.Contains("512.json does not follow from the records", check.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_journal_keeps_few_states()
    {
        var states = new KeptStates(_site.File("states"));
        for (var seq = 256; seq <= 20 * 1024; seq += 256)
            states.Keep(State.Empty with { Head = new Head(seq, new string('0', 64)) });

        var kept = Directory.GetFiles(_site.File("states")).Select(path => int.Parse(Path.GetFileNameWithoutExtension(path), System.Globalization.CultureInfo.InvariantCulture)).Order();
        Assert.Equal([4096, 8192, 12288, 16384, .. Enumerable.Range(0, 8).Select(i => (20 * 1024) - (256 * (7 - i)))], kept);
    }

    private static byte[] Whole(LiteDbJournal journal) =>
        StateForm.Write(journal.Read().Aggregate(State.Empty, (state, record) => state.Apply(record)));
}
