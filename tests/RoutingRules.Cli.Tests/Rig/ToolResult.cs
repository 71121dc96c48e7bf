using System.Text;

namespace RoutingRules.Cli.Tests.Rig;

/// <summary>What a run of the tool left behind.</summary>
internal sealed record ToolResult(int Code, byte[] OutBytes, string Error)
{
    public string Out => Encoding.UTF8.GetString(OutBytes);

    /// <summary>Fails when a stack trace or the message about an internal fault is in sight.</summary>
    public ToolResult Civil()
    {
        foreach (var text in new[] { Out, Error })
        {
            Assert.DoesNotContain("   at RoutingRules", text, StringComparison.Ordinal);
            Assert.DoesNotContain("   at System", text, StringComparison.Ordinal);
            Assert.DoesNotContain("internal fault", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        }

        return this;
    }
}
