using Fluid;
using Fluid.Ast;

namespace KitWorks.Labels.Templates;

/// <summary>What a placeholder may do: show values and choose between texts. What repeats, remembers or reads files is refused, so that a template cannot run away.</summary>
sealed class PlaceholderRules : AstVisitor
{
    string? broken;

    /// <summary>What the placeholder does that it may not, or null.</summary>
    public static string? Broken(IFluidTemplate template)
    {
        var rules = new PlaceholderRules();
        rules.VisitTemplate(template);
        return rules.broken;
    }

    public override Statement Visit(Statement statement)
    {
        if (statement is not (null or TextSpanStatement or OutputStatement or IfStatement or ElseIfStatement or ElseStatement or UnlessStatement
            or CaseStatement or WhenStatement or CommentStatement or RawStatement or NoOpStatement))
            broken ??= "A placeholder shows values and chooses with if, unless and case; it does not repeat, remember or include. A list is drawn by a group with “each”.";
        return broken is null ? base.Visit(statement!) : statement!;
    }

    public override Expression Visit(Expression expression)
    {
        if (expression is RangeExpression) broken ??= "A placeholder has no ranges; a list is drawn by a group with “each”.";
        return broken is null ? base.Visit(expression) : expression;
    }

    protected override Expression VisitMemberExpression(MemberExpression memberExpression)
    {
        foreach (var index in memberExpression.Segments.OfType<IndexerSegment>()) Visit(index.Expression);
        return memberExpression;
    }
}
