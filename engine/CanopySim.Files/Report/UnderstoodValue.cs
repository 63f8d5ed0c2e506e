using CanopySim.Parameters;

namespace CanopySim.Files.Report;

/// <summary>A value as the scenario was understood, and how sure it is.</summary>
/// <param name="Key">Its key in the scenario, dotted.</param>
/// <param name="Value">Number and unit, as they shall be read.</param>
/// <param name="Mark">How sure it is.</param>
/// <param name="Source">Where it comes from; empty where nothing is to be named.</param>
public sealed record UnderstoodValue(string Key, string Value, Mark Mark, string Source);
