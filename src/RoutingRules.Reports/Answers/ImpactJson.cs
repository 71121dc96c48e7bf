using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.FindingReports;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes what each loss does to a show as JSON after the published schema (<c>urn:routing-rules:impact:1</c>).</summary>
/// <remarks>Indented UTF-8 without a byte order mark, LF, a line break at the end; the same answer gives the same bytes.</remarks>
public static class ImpactJson
{
    /// <summary>Writes an answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(ImpactAnswer answer, Stream output)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(output);
        WriteDocument(
            output,
            json =>
            {
                json.WriteNumber("moves", answer.Moves);
                WriteLosses(json, "losses", answer.Losses);
                WriteLosses(json, "pairs", answer.Pairs);
                json.WriteNumber("pairsOmitted", answer.PairsOmitted);
                WriteObjects(json, "failureSets", answer.FailureSets, sets => Write(json, sets));
                WriteList(json, "notArriving", answer.NotArriving);
            }
        );
    }

    private static void WriteLosses(Utf8JsonWriter json, string name, ValueList<LossImpact> losses) =>
        WriteObjects(json, name, losses, loss => Write(json, loss));

    private static void Write(Utf8JsonWriter json, LossImpact loss)
    {
        json.WritePropertyName("lost");
        Write(json, loss.Lost);
        json.WriteBoolean("singlePoint", loss.IsSinglePoint);
        WriteList(json, "silences", loss.Silences);
        WriteObjects(json, "subjects", loss.Subjects, subject => Write(json, subject));
        WriteList(json, "outputs", loss.Outputs);
        WriteList(json, "channels", loss.Channels);
        WriteList(json, "rerouted", loss.Rerouted);
        json.WriteNumber("feedsKept", loss.FeedsKept);
        json.WriteNumber("linesKept", loss.LinesKept);
        WriteList(json, "remarks", loss.Remarks);
        if (loss.Plan is { } plan)
        {
            Write(json, plan);
        }
    }

    private static void Write(Utf8JsonWriter json, LostSubject subject)
    {
        json.WriteString("kind", subject.Role is null ? "line" : "feed");
        json.WriteString("id", JsonReport.Whole(subject.Subject));
        json.WriteString("name", JsonReport.Whole(subject.Name));
        WriteOptional(json, "role", subject.Role?.Value);
        if (subject.IsInEar)
        {
            json.WriteBoolean("inEar", true);
        }

        json.WriteString(
            "priority",
            subject.Priority switch
            {
                Priority.Critical => "critical",
                Priority.High => "high",
                Priority.Low => "low",
                _ => "normal",
            }
        );
        json.WriteBoolean("protected", subject.IsProtected);
        WriteOptional(json, "person", subject.Person);
        json.WriteString(
            "fate",
            subject.Fate switch
            {
                LossFate.BackedUp => "backed-up",
                LossFate.Partly => "partly",
                _ => "lost",
            }
        );
        WriteList(json, "lostAt", subject.LostAt);
        WriteList(json, "remainsAt", subject.RemainsAt);
        WriteList(json, "backups", subject.Backups);
    }

    private static void Write(Utf8JsonWriter json, FallbackPlan plan)
    {
        json.WriteStartObject("plan");
        json.WriteNumber("moves", plan.Moves);
        WriteObjects(json, "steps", plan.Steps, step => Write(json, step));
        WriteObjects(
            json,
            "recovered",
            plan.Recovered,
            recovered =>
            {
                json.WriteString("demand", JsonReport.Whole(recovered.Demand));
                json.WriteString("from", recovered.From.ToString());
                json.WriteString("to", recovered.To.ToString());
            }
        );
        WriteObjects(
            json,
            "unrecovered",
            plan.Unrecovered,
            unrecovered =>
            {
                json.WriteString("demand", JsonReport.Whole(unrecovered.Demand));
                WriteOptional(json, "sink", unrecovered.Sink?.ToString());
                json.WriteString("reason", JsonReport.Whole(unrecovered.Reason));
            }
        );
        WriteObjects(
            json,
            "displaced",
            plan.Displaced,
            displaced =>
            {
                json.WriteString("demand", JsonReport.Whole(displaced.Demand));
                json.WriteString("at", displaced.At.ToString());
                json.WriteString("by", JsonReport.Whole(displaced.By));
            }
        );
        WriteList(json, "newErrors", plan.NewErrors);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, FallbackStep step)
    {
        json.WriteString(
            "kind",
            step.Kind switch
            {
                FallbackStepKind.Pull => "pull",
                FallbackStepKind.Replug => "replug",
                FallbackStepKind.Stream => "stream",
                _ => "route",
            }
        );
        json.WriteString("device", step.Device.Value);
        WriteOptional(json, "demand", step.Demand);
        WriteOptional(json, "from", step.From?.ToString());
        WriteOptional(json, "to", step.To?.ToString());
        if (step.Kind is FallbackStepKind.Replug or FallbackStepKind.Pull)
        {
            WriteList(json, "cableTo", step.CableTo);
        }

        if (step.Kind == FallbackStepKind.Replug)
        {
            json.WriteBoolean("ownCable", step.HasOwnCable);
            json.WriteBoolean("elsewhere", step.IsElsewhere);
        }

        if (step.StreamId is { } id)
        {
            json.WriteStartObject("stream");
            json.WriteString("id", id.Value);
            WriteStream(json, step.Stream);
            json.WriteEndObject();
        }

        if (step.Route is { } route)
        {
            json.WriteStartObject("route");
            WriteOptional(json, "from", route.From?.ToString());
            json.WriteString("to", route.To.ToString());
            json.WriteEndObject();
        }
    }

    private static void WriteStream(Utf8JsonWriter json, AudioStream? stream)
    {
        if (stream is null)
        {
            return;
        }

        json.WriteString("from", stream.From.ToString());
        WriteObjects(
            json,
            "to",
            stream.To,
            receiver =>
            {
                json.WriteString("at", receiver.At.ToString());
                WriteOptional(json, "channels", receiver.Channels?.ToString());
            }
        );
    }

    private static void Write(Utf8JsonWriter json, FailureSets sets)
    {
        json.WriteString("feed", JsonReport.Whole(sets.Feed));
        json.WriteString("name", JsonReport.Whole(sets.Name));
        json.WriteString("role", sets.Role.Value);
        WriteOptional(json, "smallest", sets.Smallest);
        json.WriteNumber("limit", sets.Limit);
        json.WriteStartArray("sets");
        foreach (var set in sets.Sets)
        {
            Write(json, set);
        }

        json.WriteEndArray();
        json.WriteNumber("omitted", sets.Omitted);
    }

    private static void Write(Utf8JsonWriter json, ValueList<LostThing> things)
    {
        json.WriteStartArray();
        foreach (var thing in things)
        {
            json.WriteStartObject();
            json.WriteString("kind", ImpactWords.Kind(thing.Kind));
            json.WriteString("id", JsonReport.Whole(thing.Id));
            WriteOptional(json, "label", thing.Label);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
