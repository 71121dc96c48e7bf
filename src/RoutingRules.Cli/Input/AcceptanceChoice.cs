namespace RoutingRules.Cli.Input;

/// <summary>What a command line says about findings that are to be lived with.</summary>
/// <param name="Waivers">The file of <c>--waivers</c>; null when it was not given.</param>
/// <param name="AsOf">The day for which waivers count.</param>
/// <param name="Baseline">The file of <c>--baseline</c>; null when it was not given.</param>
/// <param name="IsUpdate"><c>--update-baseline</c> was given.</param>
/// <param name="IsForce"><c>--force</c> was given.</param>
internal sealed record AcceptanceChoice(string? Waivers, DateOnly AsOf, string? Baseline, bool IsUpdate, bool IsForce)
{
    /// <summary>The files that are read, so that no report takes their place.</summary>
    public IEnumerable<string> Files => new[] { Waivers, Baseline }.OfType<string>();
}
