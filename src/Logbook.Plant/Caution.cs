namespace Logbook.Plant;

/// <summary>A caution of the site: shown when its trigger is there. Reminds; never replaces procedures, codes or judgement.</summary>
/// <param name="Trigger"><c>state:acid</c>, <c>carry:KIND</c>, <c>limit:TAG</c>, or <c>always</c> for the standing one.</param>
/// <param name="ApprovedBy">Null: printed as a draft, not approved by the site.</param>
public sealed record Caution(
    string Hazard, string Trigger, string Text, string Ppe, string FirstAid, string Source, string Revision, string? ApprovedBy);
