namespace RoutingRules.Cli.Tests.Rig;

/// <summary>A configuration that switches every built-in rule off, so that only the rules of a test speak.</summary>
internal static class QuietConfig
{
    /// <param name="failOn">The threshold.</param>
    /// <param name="more">Further settings of rules.</param>
    public static string Text(string failOn = "warning", params string[] more)
    {
        var settings = RoutingEngine.CreateBuilder().Build().Rules.Select(rule => $$"""{ "rule": "{{rule.Descriptor.Id}}", "enabled": false }""").Concat(more);
        return $$"""{ "schemaVersion": 1, "failOn": "{{failOn}}", "rules": [ {{string.Join(", ", settings)}} ] }""";
    }
}
