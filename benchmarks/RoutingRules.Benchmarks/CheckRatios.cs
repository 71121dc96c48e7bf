using System.Globalization;
using System.Text.Json;
using Json.Schema;
using RoutingRules.Checking;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Schema;

namespace RoutingRules.Benchmarks;

/// <summary>A whole check, from bytes to findings, against parsing alone.</summary>
public static class CheckRatios
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static readonly JsonSchema SecondSchema = JsonSchema.FromText(RoutingSchemas.Show);

    /// <summary>Prints the ratios.</summary>
    public static void Run()
    {
        var festival = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "04-festival.show.json")).Value!;
        foreach (var length in new[] { 20_480, int.MaxValue })
        {
            var show = ShowWriter.ToUtf8(Patched(festival, length));
            var model = ShowReader.Read(show).Value!;
            var resolved = Engine.Resolve(model);
            void Parse()
            {
                using var parsed = JsonDocument.Parse(show);
            }

            void Check() => Engine.Check(ShowReader.Read(show).Value!);

            var result = Engine.Check(model);
            Ratios.Header(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{show.Length} bytes, {resolved.Graph.PointCount} points, {result.Rules.Count} rules, {result.Findings.Count} findings, "
                        + $"against JsonDocument.Parse"
                )
            );
            Ratios.Print("read", () => ShowReader.Read(show), Parse);
            Ratios.Print("read and resolve", () => Engine.Resolve(ShowReader.Read(show).Value!), Parse);
            Ratios.Print("read, resolve and run every rule", Check, Parse);
            Ratios.Print("rules alone", () => Engine.Check(resolved), Parse);
            Ratios.Print("NJsonSchema, schema only", () => SchemaValidator.Validate(SchemaKind.Show, show), Parse);
            Ratios.Print("JsonSchema.Net, schema only", () => Validate(show), Parse);
            Ratios.Print("NJsonSchema against the whole check", () => SchemaValidator.Validate(SchemaKind.Show, show), Check);
            Ratios.Print("JsonSchema.Net against the whole check", () => Validate(show), Check);
            Console.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"allocated by a whole check: {Ratios.Allocated(Check) / (double)show.Length:F1} x the document")
            );
        }
    }

    /// <summary>Prints what each rule takes by itself on the patched festival, dearest first.</summary>
    public static void RunRules()
    {
        var festival = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "04-festival.show.json")).Value!;
        var model = Patched(festival, 20_480);
        var resolved = Engine.Resolve(model);
        Ratios.Header("One rule by itself: microseconds, bytes, units of work");
        var rows = new List<(double Time, string Row)>();
        foreach (var active in Engine.Checker.Rules)
        {
            void One() => RuleRunner.Run(resolved, [active], RuleRunner.DefaultBudget, CancellationToken.None);
            var time = Ratios.Microseconds(One);
            var work = RuleRunner.Run(resolved, [active], RuleRunner.DefaultBudget, CancellationToken.None).Rules[0].WorkUnits;
            rows.Add(
                (
                    time,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{active.Rule.Descriptor.Id} {active.Rule.Descriptor.Name, -32} {time, 8:F2} {Ratios.Allocated(One), 10:N0} {work, 8:N0}"
                    )
                )
            );
        }

        foreach (var (_, row) in rows.OrderByDescending(row => row.Time))
        {
            Console.WriteLine(row);
        }
    }

    private static bool Validate(byte[] show)
    {
        using var document = JsonDocument.Parse(show);
        return SecondSchema.Evaluate(document.RootElement).IsValid;
    }

    /// <summary>The festival cut down until its patched document is no longer than so many bytes; its input settings and labels go along.</summary>
    private static Show Patched(Show festival, int length)
    {
        for (var keep = festival.Feeds.Count + festival.Lines.Count; ; keep -= 2)
        {
            var feeds = Math.Min(festival.Feeds.Count, (keep + 1) / 2);
            var cut = festival with { Feeds = festival.Feeds.Take(feeds).ToValueList(), Lines = festival.Lines.Take(keep - feeds).ToValueList() };
            var patched = Engine.Assign(cut).Show;
            if (ShowWriter.ToUtf8(patched).Length <= length)
            {
                return patched;
            }
        }
    }
}
