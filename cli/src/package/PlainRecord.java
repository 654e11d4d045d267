import java.lang.classfile.Attributes;
import java.lang.classfile.ClassModel;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeBuilder;
import java.lang.classfile.Label;
import java.lang.classfile.MethodModel;
import java.lang.classfile.TypeKind;
import java.lang.classfile.attribute.RecordComponentInfo;
import java.lang.classfile.instruction.InvokeDynamicInstruction;
import java.lang.constant.ClassDesc;
import java.lang.constant.ConstantDescs;
import java.lang.constant.MethodTypeDesc;
import java.util.List;

/**
 * Gives a record's class {@code equals} and {@code hashCode} as plain code that does the same.
 *
 * <p>The compiler leaves both to {@code java.lang.runtime.ObjectMethods}, which makes them at their first use, in every
 * process anew: the cache keeps none of it.
 */
final class PlainRecord {

    private static final String MAKER = "java.lang.runtime";
    private static final int PRIME = 31;
    private static final ClassDesc OBJECTS = ClassDesc.of("java.util.Objects");

    private final ClassDesc type;
    private final List<RecordComponentInfo> components;

    private PlainRecord(ClassModel model) {
        this.type = model.thisClass().asSymbol();
        this.components = model.findAttribute(Attributes.record()).orElseThrow().components();
    }

    static ClassTransform of(ClassModel model) {
        PlainRecord plain = new PlainRecord(model);
        return (builder, element) -> {
            if (!(element instanceof MethodModel method) || !isMadeLate(method)) {
                builder.with(element);
            } else if (method.methodName().equalsString("equals")) {
                builder.withMethodBody(
                        method.methodName(), method.methodType(), method.flags().flagsMask(), plain::equal);
            } else if (method.methodName().equalsString("hashCode")) {
                builder.withMethodBody(
                        method.methodName(), method.methodType(), method.flags().flagsMask(), plain::hash);
            } else {
                builder.with(element);
            }
        };
    }

    private static boolean isMadeLate(MethodModel method) {
        return method.code().stream()
                .flatMap(code -> code.elementStream())
                .anyMatch(each -> each instanceof InvokeDynamicInstruction call
                        && call.bootstrapMethod().owner().packageName().equals(MAKER));
    }

    private void equal(CodeBuilder code) {
        Label different = code.newLabel();
        code.aload(1).instanceOf(type).ifeq(different);
        for (RecordComponentInfo component : components) {
            ClassDesc kind = component.descriptorSymbol();
            String name = component.name().stringValue();
            code.aload(0).getfield(type, name, kind).aload(1).checkcast(type).getfield(type, name, kind);
            switch (TypeKind.from(kind)) {
                case BOOLEAN, BYTE, CHAR, SHORT, INT -> code.if_icmpne(different);
                case LONG -> code.lcmp().ifne(different);
                case FLOAT, DOUBLE ->
                    code.invokestatic(box(kind), "compare", MethodTypeDesc.of(ConstantDescs.CD_int, kind, kind))
                            .ifne(different);
                default ->
                    code.invokestatic(
                                    OBJECTS,
                                    "equals",
                                    MethodTypeDesc.of(
                                            ConstantDescs.CD_boolean, ConstantDescs.CD_Object, ConstantDescs.CD_Object))
                            .ifeq(different);
            }
        }
        code.iconst_1().ireturn().labelBinding(different).iconst_0().ireturn();
    }

    private void hash(CodeBuilder code) {
        code.iconst_0();
        for (RecordComponentInfo component : components) {
            ClassDesc kind = component.descriptorSymbol();
            code.loadConstant(PRIME)
                    .imul()
                    .aload(0)
                    .getfield(type, component.name().stringValue(), kind);
            if (kind.isPrimitive()) {
                code.invokestatic(box(kind), "hashCode", MethodTypeDesc.of(ConstantDescs.CD_int, kind));
            } else {
                code.invokestatic(
                        OBJECTS, "hashCode", MethodTypeDesc.of(ConstantDescs.CD_int, ConstantDescs.CD_Object));
            }
            code.iadd();
        }
        code.ireturn();
    }

    private static ClassDesc box(ClassDesc primitive) {
        return switch (TypeKind.from(primitive)) {
            case BOOLEAN -> ConstantDescs.CD_Boolean;
            case BYTE -> ConstantDescs.CD_Byte;
            case CHAR -> ConstantDescs.CD_Character;
            case SHORT -> ConstantDescs.CD_Short;
            case INT -> ConstantDescs.CD_Integer;
            case LONG -> ConstantDescs.CD_Long;
            case FLOAT -> ConstantDescs.CD_Float;
            case DOUBLE -> ConstantDescs.CD_Double;
            default -> throw new IllegalArgumentException(primitive + " is no primitive type");
        };
    }
}
