namespace CrossExamination.Tests.Plants;

/// <summary>The readings of the simulated line, in the order of their places.</summary>
internal enum Tag
{
    WhiteA,
    WhiteB,
    WhiteC,
    GreenA,
    GreenB,
    GreenC,
    GreenFlow,
    LimeWeigher,
    LimeScrew,
    LimeCao,
    GreenTemperature,
    SlakerTemperature,
    GreenDensity,
    GreenTankTemperature,
    MudFlow,
    MudDensity,
    WeakWash,
    WeakWashDensity,
    WeakWashTemperature,
    Grits,
}
