using System.Text.Json;
using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>What a record says. The kind names the form; an unknown kind is kept, verified and shown raw.</summary>
public abstract record RecordBody
{
    public abstract string Kind { get; }
}

/// <summary>The site's files put in force, with their full text.</summary>
public sealed record SiteAdopted(IReadOnlyDictionary<string, string> Files, string Why) : RecordBody
{
    public override string Kind => "site";

    /// <summary>What they change, in words, as it was signed; null for the files that an empty journal took up, and in older records.</summary>
    public IReadOnlyList<string>? Changes { get; init; }

    /// <summary>Who answers for them; null for the files that an empty journal took up.</summary>
    public Signed? Signed { get; init; }
}

/// <summary>What a person saved at once: a round or a part of it.</summary>
public sealed record Entry : RecordBody
{
    public override string Kind => "entry";

    /// <summary>Id of the round, when it was one.</summary>
    public string? Round { get; init; }

    public DateTimeOffset? WalkStart { get; init; }

    public DateTimeOffset? WalkEnd { get; init; }

    /// <summary>The file that it was imported from.</summary>
    public string? Imported { get; init; }

    /// <summary>Sequence number of the entry whose readings are taken a second time here; that one stays as it is.</summary>
    public long? SecondOf { get; init; }

    public string? Remark { get; init; }

    public IReadOnlyList<Reading> Readings { get; init; } = [];

    public IReadOnlyList<Result> Results { get; init; } = [];

    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>Words without a reading.</summary>
public sealed record Remark(string Text, string? On, long? Related) : RecordBody
{
    public override string Kind => "remark";
}

/// <summary>Readings of an earlier entry put right, or taken back. Both stay.</summary>
/// <param name="Target">Sequence number of the entry.</param>
/// <param name="Reading">
/// The one reading as it should have been, the form of the first programs; null when there are <see cref="Several"/>. It
/// stands for the entry's reading of that point; where the entry has several of them, for the one with the same time, else
/// for the newest. One that was not taken takes the entry's value back.
/// </param>
/// <param name="Results">All results of that entry, run again: one that is missing here stands no longer.</param>
/// <param name="Findings">All findings of that entry, run again: they stand for the earlier ones.</param>
public sealed record Correction(
    long Target, Reading? Reading, string Why, IReadOnlyList<Result> Results, IReadOnlyList<Finding> Findings) : RecordBody
{
    public override string Kind => "correction";

    /// <summary>Readings of different points that were put right at once, as end points that were swapped must be.</summary>
    public IReadOnlyList<Reading>? Several { get; init; }

    /// <summary>Places, from 1, of findings that had their answer before: they stand, and ask for none again. Null when there is none, and in older records.</summary>
    public IReadOnlyList<int>? Answered { get; init; }

    /// <summary>Everything that is put right, in either form.</summary>
    [JsonIgnore] // follows from the other two
    public IReadOnlyList<Reading> Readings => Several ?? (Reading is null ? [] : [Reading]);

    /// <summary>The time of the first of them.</summary>
    public DateTimeOffset ReadAt => Readings[0].At;

    public static Correction Of(long target, IReadOnlyList<Reading> readings, string why, IReadOnlyList<Result> results, IReadOnlyList<Finding> findings) =>
        readings is [var one] ? new(target, one, why, results, findings) : new(target, null, why, results, findings) { Several = readings };

    /// <summary>What it says of the point; null when nothing.</summary>
    public Reading? Of(string point) => Readings.FirstOrDefault(r => r.Point.Equals(point, StringComparison.OrdinalIgnoreCase));

    /// <summary>An entry's readings as they stand after it: one for one, of a point that is there more than once the first.</summary>
    public IReadOnlyList<Reading> PutInto(IReadOnlyList<Reading> readings)
    {
        var standing = readings.ToList();
        foreach (var reading in Readings)
        {
            if (standing.FindIndex(r => r.Point.Equals(reading.Point, StringComparison.OrdinalIgnoreCase)) is >= 0 and var place)
                standing[place] = reading;
        }

        return standing;
    }
}

/// <summary>What a piece of equipment does, since when.</summary>
/// <param name="State">running, starting, stopped, standby, washing, acid, draining or out.</param>
public sealed record EquipmentStateChanged(string Equipment, string State, DateTimeOffset Since, string? Why) : RecordBody
{
    public override string Kind => "state";
}

/// <summary>Something open that outlives the shift. Its id is the sequence number of this record.</summary>
/// <param name="ItemKind">action, isolation, permit, bypass, temporary-change, out-of-service, safety-equipment, wash, transfer, delivery, sample, injury or release.</param>
/// <param name="On">Code of the equipment or the area.</param>
/// <param name="Owner">Code of the person who owns it.</param>
/// <param name="Fields">What this kind asks for beside it: <c>number</c>, <c>inside</c>, <c>instead</c> and so on.</param>
public sealed record Carry(
    string ItemKind, string On, string Text, DateTimeOffset? Until, string? Owner, IReadOnlyDictionary<string, string> Fields) : RecordBody
{
    public override string Kind => "carry";
}

/// <summary>A carried item closed, by a named person with a reason.</summary>
public sealed record CarryClosed(long Id, string Why) : RecordBody
{
    public override string Kind => "carry-close";

    /// <summary><c>off</c> when the own lock, which was recorded as on, came off with it; null when none was.</summary>
    public string? Lock { get; init; }

    /// <summary>The signature, where the item could hurt.</summary>
    public Signed? Signed { get; init; }
}

/// <summary>A kind or form this version does not know: kept and verified, shown raw.</summary>
public sealed record UnknownBody(string RawKind, JsonElement Raw) : RecordBody
{
    public override string Kind => RawKind;
}

/// <summary>The site's own plug-in as an engineer trusted it: nothing but these files is loaded. A later record of the same name replaces it.</summary>
/// <param name="Files">File inside the plug-in's folder to the SHA-256 of its content, in hex.</param>
public sealed record PluginTrusted(string Name, IReadOnlyDictionary<string, string> Files, string Why) : RecordBody
{
    public override string Kind => "plugins";

    /// <summary>Who answers for it; null in a record of a program that did not ask.</summary>
    public Signed? Signed { get; init; }
}
