using System.Globalization;
using System.Text;
using Logbook.Journal;

namespace Logbook.Storage.LiteDb.Values;

/// <summary>
/// What some entries say of one point, as bytes and back. Column by column, since what stands in one column is much alike and
/// packs to almost nothing: a value takes four or five bytes, its record two hundred.
/// </summary>
internal static class ValueColumns
{
    private enum Number : byte { None, AsTyped, Written }

    public static byte[] Write(IReadOnlyList<PointInEntry> entries)
    {
        using var bytes = new MemoryStream();
        using var to = new BinaryWriter(bytes, Encoding.UTF8);
        to.Write7BitEncodedInt(entries.Count);
        WriteSteps(to, entries.Select(e => e.Origin.Seq));
        WriteTimes(to, entries.Select(e => e.Origin.At));
        WriteTexts(to, entries.Select(e => e.Origin.By));
        WriteTexts(to, entries.Select(e => e.Origin.Round));
        WriteSteps(to, entries.Select(e => (long)e.Read.Count));
        WriteSteps(to, entries.Select(e => (long)e.Derived.Count));
        var values = entries.SelectMany(e => e.Read.Concat(e.Derived)).ToList();
        WriteTexts(to, values.Select(v => v.Point));
        WriteTimes(to, values.Select(v => v.At));
        WriteTexts(to, values.Select(v => v.Typed));
        WriteTexts(to, values.Select(v => v.Unit));
        WriteTexts(to, values.Select(v => v.Why));
        foreach (var value in values)
            WriteNumber(to, value);
        to.Flush();
        return bytes.ToArray();
    }

    public static IReadOnlyList<PointInEntry> Read(byte[] bytes)
    {
        using var from = new BinaryReader(new MemoryStream(bytes), Encoding.UTF8);
        var count = from.Read7BitEncodedInt();
        var (seqs, times, bys, rounds) = (ReadSteps(from, count), ReadTimes(from, count), ReadTexts(from, count), ReadTexts(from, count));
        var (read, derived) = (ReadSteps(from, count), ReadSteps(from, count));
        var values = ReadValues(from, (int)(read.Sum() + derived.Sum()));
        var (entries, next) = (new PointInEntry[count], 0);
        for (var i = 0; i < count; i++)
        {
            var origin = new Origin(seqs[i], times[i], bys[i]!, rounds[i]);
            entries[i] = new(origin, Take(origin, read[i]), Take(origin, derived[i]));
        }

        return entries;

        IReadOnlyList<SeriesValue> Take(Origin origin, long some)
        {
            next += (int)some;
            return some == 0 ? [] : [.. values[(next - (int)some)..next].Select(v => v with { Seq = origin.Seq, By = origin.By, Round = origin.Round })];
        }
    }

    private static SeriesValue[] ReadValues(BinaryReader from, int count)
    {
        var (points, times, typed, units, whys) = (ReadTexts(from, count), ReadTimes(from, count), ReadTexts(from, count), ReadTexts(from, count), ReadTexts(from, count));
        var values = new SeriesValue[count];
        for (var i = 0; i < count; i++)
            values[i] = new(points[i]!, times[i], ReadNumber(from, typed[i]), typed[i], units[i]!, whys[i], Round: null, By: "", Seq: 0, CorrectedBy: null);
        return values;
    }

    // Most values are what was typed, read as a number.
    private static void WriteNumber(BinaryWriter to, SeriesValue value)
    {
        var kind = value.Value is not { } number ? Number.None : Same(Parsed(value.Typed), number) ? Number.AsTyped : Number.Written;
        to.Write((byte)kind);
        if (kind == Number.Written)
            to.Write(value.Value!.Value);
    }

    private static double? ReadNumber(BinaryReader from, string? typed) => (Number)from.ReadByte() switch
    {
        Number.None => null,
        Number.AsTyped => Parsed(typed) ?? throw new InvalidDataException("a kept value is no number"),
        _ => from.ReadDouble(),
    };

    private static double? Parsed(string? typed) => double.TryParse(typed, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static bool Same(double? parsed, double number) => parsed is { } other && BitConverter.DoubleToInt64Bits(other) == BitConverter.DoubleToInt64Bits(number);

    private static void WriteTimes(BinaryWriter to, IEnumerable<DateTimeOffset> times)
    {
        var all = times.ToList();
        WriteSteps(to, all.Select(t => t.ToUnixTimeMilliseconds()));
        WriteSteps(to, all.Select(t => (long)t.TotalOffsetMinutes));
    }

    private static DateTimeOffset[] ReadTimes(BinaryReader from, int count)
    {
        var (times, offsets) = (ReadSteps(from, count), ReadSteps(from, count));
        return [.. times.Zip(offsets, (ms, minutes) => DateTimeOffset.FromUnixTimeMilliseconds(ms).ToOffset(TimeSpan.FromMinutes(minutes)))];
    }

    private static void WriteSteps(BinaryWriter to, IEnumerable<long> numbers)
    {
        var before = 0L;
        foreach (var number in numbers)
        {
            to.Write7BitEncodedInt64(number - before);
            before = number;
        }
    }

    private static long[] ReadSteps(BinaryReader from, int count)
    {
        var (numbers, before) = (new long[count], 0L);
        for (var i = 0; i < count; i++)
            numbers[i] = before += from.Read7BitEncodedInt64();
        return numbers;
    }

    private static void WriteTexts(BinaryWriter to, IEnumerable<string?> texts)
    {
        foreach (var text in texts)
        {
            to.Write(text is not null);
            if (text is not null)
                to.Write(text);
        }
    }

    // The same word mostly comes again: one text for all of them.
    private static string?[] ReadTexts(BinaryReader from, int count)
    {
        var texts = new string?[count];
        for (var i = 0; i < count; i++)
        {
            var text = from.ReadBoolean() ? from.ReadString() : null;
            texts[i] = i > 0 && string.Equals(text, texts[i - 1], StringComparison.Ordinal) ? texts[i - 1] : text;
        }

        return texts;
    }
}
