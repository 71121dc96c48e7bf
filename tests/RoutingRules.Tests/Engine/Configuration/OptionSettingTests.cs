using RoutingRules.Checking;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Engine.Configuration;

/// <summary>Of several settings of one thing the last counts, by whichever selector it was made.</summary>
public sealed class OptionSettingTests
{
    private static RuleSetting Most(string rule, params double[] values) =>
        new() { Rule = rule, Options = values.Select(value => new RuleOptionValue { Name = "most", Value = value }).ToValueList() };

    public static TheoryData<string, double> Settings =>
        new()
        {
            { "", 4 },
            { "TT01 6", 6 },
            { "TT01 6, TT01 2", 2 },
            { "TT01 2, TT01 6", 6 },
            { "TT* 6, tells 2", 2 },
            { "tells 2, TT* 6", 6 },
            { "TT01 6 2", 2 },
            { "TT01 2 6", 6 },
            { "TT01 2, TT01", 2 },
        };

    [Theory]
    [MemberData(nameof(Settings))]
    public void The_last_setting_of_an_option_counts(string settings, double most)
    {
        var config = new EngineConfig
        {
            Rules = settings
                .Split(", ", StringSplitOptions.RemoveEmptyEntries)
                .Select(setting => setting.Split(' '))
                .Select(parts => Most(parts[0], [.. parts.Skip(1).Select(double.Parse)]))
                .ToValueList(),
        };
        var engine = RoutingEngine.CreateBuilder().AddRule(new Tells()).UseConfig(config).Build();
        var told = engine.Check(SmallShow.Of(("box", SmallProfiles.Box))).Findings.Single(finding => finding.Rule == "TT01");

        Assert.Equal($"The most is {most}.", told.Message);
        Assert.Equal(most, RuleSelection.Value(config, new Tells().Descriptor, Tells.Most));
    }

    [Theory]
    [InlineData(Severity.Note, Severity.Error)]
    [InlineData(Severity.Error, Severity.Note)]
    public void The_last_severity_counts_and_what_a_later_setting_leaves_open_stays(Severity first, Severity last)
    {
        var active = Assert.Single(
            RuleSelection.Apply(
                new EngineConfig
                {
                    Rules =
                    [
                        new()
                        {
                            Rule = "TT01",
                            Severity = first,
                            Enabled = false,
                        },
                        new()
                        {
                            Rule = "TT01",
                            Severity = last,
                            Enabled = true,
                        },
                        Most("TT01", 2),
                    ],
                },
                [new Tells()]
            )
        );

        Assert.Equal(last, active.Severity);
        Assert.Empty(
            RuleSelection.Apply(
                new EngineConfig { Rules = [new() { Rule = "TT01", Enabled = true }, new() { Rule = "tells", Enabled = false }, Most("TT01", 2)] },
                [new Tells()]
            )
        );
    }

    private sealed class Tells : Rule<ResolvedShow>
    {
        public static RuleOption Most { get; } =
            new()
            {
                Name = "most",
                Doc = "D.",
                Default = 4,
                Minimum = 1,
                Maximum = 9,
                IsWhole = true,
            };

        public override RuleDescriptor Descriptor { get; } =
            new()
            {
                Id = "TT01",
                Name = "tells",
                Title = "Test",
                Family = RuleFamily.Labels,
                Severity = Severity.Note,
                Checks = "Nothing.",
                Why = "A test needs it.",
                Remedy = "None.",
                Source = "common practice, no source",
                Options = [Most],
            };

        public override void Check(RuleContext context, ResolvedShow subject) =>
            context.Report($"The most is {context.WholeValue(Most)}.", "/patch", Entity.Of("text", "most"));
    }
}
