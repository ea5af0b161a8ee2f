namespace Logbook.Storage.LiteDb;

/// <summary>The records as they are at one moment.</summary>
/// <param name="Damage">Where the log is damaged, in words; null when it is sound. What stands before the damage can be read.</param>
internal sealed record View(RecordTable Records, string? Damage);
