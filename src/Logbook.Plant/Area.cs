namespace Logbook.Plant;

/// <summary>The plant's systems in the liquor's order, and 'site' for what belongs to none.</summary>
public static class Area
{
    public static readonly IReadOnlyList<string> All =
    [
        "raw-green-liquor", "green-liquor-filter", "green-liquor-tank", "green-liquor-cooler", "dregs", "slaker",
        "classifier", "causticizers", "white-liquor-filter", "white-liquor-tank", "lime-mud-tank", "lime-mud-filter",
        "weak-wash", "lime", "laboratory", "site",
    ];
}
