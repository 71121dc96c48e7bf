using System.Text;
using RoutingRules.Configuration;
using RoutingRules.Documents.Tables;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Tests.Reports;

namespace RoutingRules.Tests.Engine.DocumentRuns;

public sealed class DocumentCheckTests
{
    private const string Text = """
        { "schemaVersion": 1,
          "title": "T",
          "rig": {
            "devices": [
              { "id": "a", "profile": "x/y" }
            ] } }
        """;

    private sealed class DeviceRule(Action<RuleContext, DeviceNode> check) : Rule<DeviceNode>
    {
        public override RuleDescriptor Descriptor { get; } = ReportSamples.Rule("ZZ2001", Severity.Warning);

        public override void Check(RuleContext context, DeviceNode subject) => check(context, subject);
    }

    private static RoutingEngine Engine(Action<RuleContext, DeviceNode> check, EngineConfig? config = null)
    {
        var builtIn = RoutingEngine.CreateBuilder().Build().Rules.Select(rule => new RuleSetting { Rule = rule.Descriptor.Id, Enabled = false });
        config ??= new EngineConfig();
        return RoutingEngine.CreateBuilder().AddRule(new DeviceRule(check)).UseConfig(config with { Rules = [.. builtIn, .. config.Rules] }).Build();
    }

    private static DocumentCheck Run(RoutingEngine engine, string text) => DocumentCheck.Run(engine, "a.json", Encoding.UTF8.GetBytes(text));

    [Fact]
    public void Findings_of_rules_are_located_in_the_text()
    {
        var check = Run(Engine((context, device) => context.Report("Seen.", "/rig/devices/0/profile", Entity.Of("device", device.Id))), Text);
        var finding = Assert.Single(check.Result.Findings);

        Assert.Equal((5, 31), (finding.Line, finding.Column));
        Assert.Equal(DocumentStatus.Findings, check.Status);
        Assert.Equal("T", check.Show!.Title);
    }

    [Fact]
    public void A_document_without_findings_is_clean_and_counts_the_rules_of_reading()
    {
        var check = Run(Engine((_, _) => { }), Text);

        Assert.Equal(DocumentStatus.Clean, check.Status);
        Assert.Equal(ReadingRules.All.Count + 1, check.Result.Rules.Count);
        Assert.All(check.Result.Rules, rule => Assert.Equal(RuleStatus.Passed, rule.Status));
    }

    [Fact]
    public void On_a_document_that_is_not_usable_no_rule_runs_and_the_reason_is_given_once()
    {
        var ran = false;
        var check = Run(Engine((_, _) => ran = true), Text.Replace("\"T\"", "7", StringComparison.Ordinal));

        Assert.False(ran);
        Assert.Equal(DocumentStatus.Unreadable, check.Status);
        Assert.Null(check.Show);
        Assert.Equal("RR1005", Assert.Single(check.Result.Findings).Rule);
        Assert.Equal(DocumentCheck.EveryRule, Assert.Single(check.Result.Undecided).Rule);
        Assert.Equal(RuleStatus.Found, check.Result.Rules.Single(rule => rule.Descriptor.Id == "RR1005").Status);
        Assert.Equal(RuleStatus.Undecided, check.Result.Rules.Single(rule => rule.Descriptor.Id == "ZZ2001").Status);
    }

    [Fact]
    public void A_rule_that_only_fails_to_decide_leaves_the_document_undecided() =>
        Assert.Equal(DocumentStatus.Undecided, Run(Engine((context, _) => context.CouldNotDecide("No.")), Text).Status);

    [Fact]
    public void Of_several_settings_of_one_rule_the_last_counts_and_the_others_fill_in()
    {
        var config = new EngineConfig
        {
            Rules =
            [
                new()
                {
                    Rule = "ZZ2001",
                    Severity = Severity.Error,
                    Enabled = false,
                },
                new() { Rule = "zz2001", Enabled = true },
            ],
        };
        var check = Run(Engine((context, device) => context.Report("Seen.", "", Entity.Of("device", device.Id)), config), Text);

        Assert.Equal(Severity.Error, Assert.Single(check.Result.Findings).Severity);
    }

    [Theory]
    [InlineData("RR9999", "there is none of that id or name")]
    [InlineData("RR1001", "belongs to reading")]
    public void A_setting_of_a_rule_that_cannot_be_set_is_refused(string rule, string expected)
    {
        var builder = RoutingEngine.CreateBuilder().UseConfig(new EngineConfig { Rules = [new() { Rule = rule, Enabled = false }] });

        Assert.Contains(expected, Assert.Throws<InvalidOperationException>(builder.Build).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cancelled_check_says_so_by_its_exception()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        Assert.Throws<OperationCanceledException>(() => DocumentCheck.Run(Engine((_, _) => { }), "a.json", Encoding.UTF8.GetBytes(Text), stop.Token));
    }
}
