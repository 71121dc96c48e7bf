using Mono.Cecil;

namespace RoutingRules.Architecture.Tests;

/// <summary>Collects the types of this project that a type uses.</summary>
internal sealed class TypeWalk(HashSet<TypeReference> used)
{
    public void Visit(TypeDefinition type)
    {
        Add(type.BaseType);
        Add(type.CustomAttributes.Select(attribute => attribute.AttributeType));
        Add(type.Interfaces.Select(one => one.InterfaceType));
        Add(type.Fields.Select(field => field.FieldType));
        Add(type.GenericParameters.SelectMany(parameter => parameter.Constraints).Select(constraint => constraint.ConstraintType));
        foreach (var method in type.Methods)
        {
            AddMethod(method);
            if (method.HasBody)
                AddBody(method.Body);
        }

        foreach (var nested in type.NestedTypes)
            Visit(nested);
    }

    private void AddBody(Mono.Cecil.Cil.MethodBody body)
    {
        Add(body.Variables.Select(variable => variable.VariableType));
        Add(body.ExceptionHandlers.Select(handler => handler.CatchType));
        foreach (var operand in body.Instructions.Select(instruction => instruction.Operand))
        {
            switch (operand)
            {
                case MethodReference method:
                    AddMethod(method);
                    break;
                case FieldReference field:
                    Add(field.DeclaringType);
                    Add(field.FieldType);
                    break;
                case TypeReference type:
                    Add(type);
                    break;
            }
        }
    }

    private void AddMethod(MethodReference method)
    {
        Add(method.DeclaringType);
        Add(method.ReturnType);
        Add(method.Parameters.Select(parameter => parameter.ParameterType));
        if (method is GenericInstanceMethod generic)
            Add(generic.GenericArguments);
    }

    private void Add(IEnumerable<TypeReference?> types)
    {
        foreach (var type in types)
            Add(type);
    }

    private void Add(TypeReference? type)
    {
        if (type is GenericInstanceType generic)
            Add(generic.GenericArguments);

        switch (type)
        {
            case null or GenericParameter:
                break;
            case TypeSpecification made:
                Add(made.ElementType);
                break;
            case { DeclaringType: { } around }:
                Add(around);
                break;
            case { Namespace: var space } when space.StartsWith("RoutingRules", StringComparison.Ordinal):
                used.Add(type);
                break;
        }
    }
}
