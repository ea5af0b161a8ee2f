using System.Security.Cryptography;
using System.Text;
using CsCheck;
using Logbook.Testing;

namespace Logbook.Journal.Tests;

public sealed class ChainTests
{
    [Theory]
    // FIPS 180-4, SHA-256: the example messages "abc" and the 448-bit one, published with the standard by NIST.
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    public void The_hash_is_SHA_256_of_the_bytes(string message, string published)
    {
        Assert.Equal(published, JournalRecord.HashOf(Encoding.ASCII.GetBytes(message)));
    }

    [Fact]
    public void Each_record_carries_the_hash_of_the_bytes_before_it()
    {
        var journal = Filled(5);

        var prev = new string('0', 64);
        foreach (var bytes in journal.Bytes())
        {
            Assert.Contains($"\"prev\":\"{prev}\"", Encoding.UTF8.GetString(bytes.Span), StringComparison.Ordinal);
            prev = Convert.ToHexStringLower(SHA256.HashData(bytes.Span));
        }

        Assert.Equal(prev, journal.Head.Hash);
    }

    [Fact]
    public void A_sound_chain_verifies_and_gives_its_head()
    {
        var journal = Filled(5);

        var check = journal.Verify();

        Assert.True(check.Ok);
        Assert.Equal((5, journal.Head, null), (check.Records, check.Head, check.Why));
    }

    [Fact]
    public void A_changed_byte_anywhere_is_found_by_the_record_after_it_or_by_the_noted_head()
    {
        var journal = Filled(6);
        var records = journal.Bytes().Select(bytes => bytes.ToArray()).ToArray();
        var place = Gen.Int[0, records.Length - 1].SelectMany(r => Gen.Select(Gen.Const(r), Gen.Int[0, records[r].Length - 1], Gen.Int[1, 255]));

        place.Sample((record, index, flip) =>
        {
            var changed = records.Select(bytes => bytes.ToArray()).ToArray();
            changed[record][index] ^= (byte)flip;

            var check = Chain.Verify(changed.Select(bytes => new ReadOnlyMemory<byte>(bytes)), journal.Head);

            Assert.False(check.Ok);
            Assert.InRange(check.FirstBad!.Value, record + 1, record + 2);
        });
    }

    [Fact]
    public void A_record_that_is_missing_doubled_or_out_of_place_is_found()
    {
        var r = Filled(4).Bytes().ToArray();

        Assert.Equal(2, Chain.Verify([r[0], r[2], r[3]]).FirstBad);
        Assert.Equal(3, Chain.Verify([r[0], r[1], r[1], r[2]]).FirstBad);
        Assert.Equal(2, Chain.Verify([r[0], r[2], r[1]]).FirstBad);
        Assert.Equal(1, Chain.Verify([r[1], r[2]]).FirstBad);
    }

    [Fact]
    public void A_lost_tail_is_found_by_the_noted_head()
    {
        var journal = Filled(4);

        var check = Chain.Verify(journal.Bytes().Take(3), journal.Head);

        Assert.Equal((4L, 3L), (check.FirstBad, check.Records));
        Assert.Contains("ends at 3", check.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_of_another_line_is_found()
    {
        var one = JournalRecord.Seal(Drafts.Of(new Remark("one", null, null)), Head.Empty);
        var other = JournalRecord.Seal(Drafts.Of(new Remark("two", null, null)) with { Chain = "line-2" }, Head.Of(one));

        Assert.Equal(2, Chain.Verify([one.Bytes, other.Bytes]).FirstBad);
    }

    private static InMemoryJournal Filled(int records)
    {
        var journal = new InMemoryJournal();
        for (var i = 1; i <= records; i++)
            journal.Append(Drafts.Entry(Drafts.Morning.AddHours(i), $"SL-T1=10{i}"));
        return journal;
    }
}
