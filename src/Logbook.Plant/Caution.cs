namespace Logbook.Plant;

/// <summary>A caution of the site: shown when its trigger is there. Reminds; never replaces procedures, codes or judgement.</summary>
/// <param name="Triggers">Any of <c>state:acid</c>, <c>carry:KIND</c>, or <c>carry:KIND@AREA</c> for what is opened in that area, <c>limit:TAG</c>; <c>sample:NAME</c> when that sample is worked on; <c>area:AREA</c> when
/// something is opened there or changes its state; or <c>always</c> for a standing one.</param>
/// <param name="ApprovedBy">Null: printed as a draft, not approved by the site.</param>
public sealed record Caution(
    string Hazard, IReadOnlyList<string> Triggers, string Text, string Ppe, string FirstAid, string Source, string Revision, string? ApprovedBy)
{
    /// <summary>What is there when something is opened or changes its state at a place: the thing itself, the thing in its area, the area.</summary>
    /// <param name="what"><c>carry:KIND</c> or <c>state:STATE</c>.</param>
    /// <param name="on">Equipment or an area.</param>
    public static IReadOnlyList<string> Of(Site site, string what, string on)
    {
        var area = site.FindEquipment(on)?.Area ?? on;
        return [what, $"{what}@{area}", "area:" + area];
    }
}
