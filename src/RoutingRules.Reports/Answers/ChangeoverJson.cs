using System.Globalization;
using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Planning.Comparing;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes changeovers as JSON after the published schema (<c>urn:routing-rules:changeover:1</c>).</summary>
/// <remarks>Indented UTF-8 without a byte order mark, LF, a line break at the end; the same plan gives the same bytes.</remarks>
public static class ChangeoverJson
{
    /// <summary>Writes the changeover between two shows.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="comparison">What differs between the two.</param>
    /// <param name="before">The show that is played.</param>
    /// <param name="after">The show that comes.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(ChangeoverPlan plan, ShowComparison comparison, Show before, Show after, Stream output)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        Whole(
            output,
            after.Title,
            json =>
            {
                WriteList<string>(json, "acts", []);
                ComparisonJson.WriteFindings(json, "commonFindings", default);
                ComparisonJson.WriteFindings(json, "runFindings", default);
                WriteList<string>(json, "kit", []);
                WriteObjects(json, "changeovers", [plan], only => WriteChangeover(json, only, comparison.Hazards, before.Title, after.Title, null));
            }
        );
    }

    /// <summary>Writes everything about a running order.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(RunningOrderPlan plan, Stream output)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Whole(
            output,
            plan.Run.Title,
            json =>
            {
                WriteObjects(json, "acts", plan.Acts, act => WriteAct(json, plan, act));
                ComparisonJson.WriteFindings(json, "commonFindings", plan.CommonFindings);
                ComparisonJson.WriteFindings(json, "runFindings", plan.RunFindings);
                WriteKit(json, plan.Kit);
                WriteObjects(
                    json,
                    "changeovers",
                    plan.Changeovers,
                    changeover =>
                        WriteChangeover(
                            json,
                            changeover.Plan,
                            changeover.Comparison.Hazards,
                            changeover.From.Id.Value,
                            changeover.To.Id.Value,
                            changeover.To.ChangeoverMinutes
                        )
                );
            }
        );
    }

    private static void Whole(Stream output, string title, Action<Utf8JsonWriter> content)
    {
        ArgumentNullException.ThrowIfNull(output);
        WriteDocument(
            output,
            json =>
            {
                json.WriteString("title", JsonReport.Whole(title));
                content(json);
            }
        );
    }

    private static void WriteAct(Utf8JsonWriter json, RunningOrderPlan plan, ActPlan act)
    {
        json.WriteString("id", act.Act.Id.Value);
        json.WriteString("name", JsonReport.Whole(act.Act.DisplayName));
        WriteOptional(json, "start", act.Act.Start?.ToString("HH:mm", CultureInfo.InvariantCulture));
        json.WriteBoolean("assigned", act.IsAssigned);
        ComparisonJson.WriteFindings(json, "findings", plan.OwnFindings(act));
        WriteList(json, "unplaced", act.Unplaced.Select(unplaced => unplaced.Demand));
    }

    private static void WriteKit(Utf8JsonWriter json, ValueList<KitTotal> kit)
    {
        WriteObjects(
            json,
            "kit",
            kit,
            total =>
            {
                json.WriteString("kind", Word(total.Kind));
                json.WriteString("name", JsonReport.Whole(total.Name));
                WriteOptional(json, "suppliedBy", total.SuppliedBy);
                json.WriteNumber("most", total.Most);
                WriteList(json, "acts", total.Acts);
            }
        );
    }

    private static void WriteChangeover(Utf8JsonWriter json, ChangeoverPlan plan, ValueList<Finding> hazards, string from, string to, int? minutes)
    {
        json.WriteString("from", JsonReport.Whole(from));
        json.WriteString("to", JsonReport.Whole(to));
        WriteOptional(json, "minutes", minutes);
        json.WriteNumber("seconds", plan.SecondsAfterTheActBefore);
        json.WriteNumber("rollbackAfter", plan.RollbackAfter);
        WriteList(json, "remarks", plan.Remarks);
        ComparisonJson.WriteFindings(json, "hazards", hazards);
        WriteObjects(
            json,
            "steps",
            plan.Steps,
            step =>
            {
                json.WriteNumber("number", step.Number);
                json.WriteString("phase", Word(step.Phase));
                json.WriteString("timing", Word(step.Timing));
                WriteOptional(json, "place", step.Place?.Value);
                json.WriteString("text", JsonReport.Whole(step.Text));
                if (!step.Details.IsEmpty)
                {
                    WriteList(json, "details", step.Details);
                }

                WriteList(json, "points", step.Points);
                WriteList(json, "hazards", step.Hazards);
                json.WriteNumber("seconds", step.Seconds);
            }
        );
        WriteObjects(
            json,
            "tasks",
            plan.Tasks,
            task =>
            {
                json.WriteNumber("number", task.Number);
                json.WriteString("timing", Word(task.Timing));
                WriteOptional(json, "place", task.Place?.Value);
                json.WriteBoolean("load", task.IsLoad);
                json.WriteString("text", JsonReport.Whole(task.Text));
                json.WriteStartArray("steps");
                foreach (var step in task.Steps)
                {
                    json.WriteNumberValue(step.Number);
                }

                json.WriteEndArray();
                json.WriteNumber("seconds", task.Seconds);
            }
        );
    }
}
