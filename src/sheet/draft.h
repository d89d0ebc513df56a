/* The job while it is being read: its arrays can still be written, and every entry knows the node
 * it came from. Each hs_read_... reads one key of the sheet; faults go to draft->reader. */
#ifndef HS_SHEET_DRAFT_H
#define HS_SHEET_DRAFT_H

#include "sheet/reader.h"

typedef struct hs_draft {
    hs_reader *reader;
    const hs_node *root;
    hs_job job;
    int form_known; /* part.form was read */
    const hs_node *part_node;
    hs_dimension dimension[HS_MAX_DIMENSIONS];
    const hs_node *dimension_node[HS_MAX_DIMENSIONS]; /* NULL where the entry is not usable */
    hs_face face[HS_MAX_FACES];
    const hs_node *face_node[HS_MAX_FACES]; /* NULL where the sheet has no entry */
    hs_feature feature[HS_MAX_FEATURES];
    hs_step step[HS_MAX_STEPS];
    const hs_node *step_node[HS_MAX_STEPS]; /* NULL where the kind could not be read */
} hs_draft;

void hs_read_part(hs_draft *d);
void hs_read_steel(hs_draft *d, const hs_node *node);   /* part.steel */
void hs_read_outline(hs_draft *d, const hs_node *part); /* part.outline, part.holes */
void hs_read_faces(hs_draft *d);                        /* after the part */
void hs_read_dimensions(hs_draft *d);                   /* after the faces */
void hs_read_features(hs_draft *d);                     /* after the faces */
void hs_read_route(hs_draft *d);
void hs_read_test_piece(hs_draft *d);
void hs_read_shop(hs_draft *d, const hs_node *shop); /* the object; NULL: defaults */
void hs_read_measured(hs_draft *d);                  /* after dimensions and faces */

/** Keys of one route step that only a descale has; 1 if all could be read. */
void hs_read_tank(hs_draft *d, const hs_node *node, hs_step *step);

/** `log` of a heat. */
void hs_read_log(hs_draft *d, const hs_node *node, hs_step *step);

/** Which faces a dimension lies across; faults are noted. 1 when it was found. */
int hs_read_across(hs_draft *d, const hs_node *node, hs_dimension *dimension);

/* Checks over what was read. Each looks only at what is there. */
void hs_check_order(hs_draft *d);
void hs_check_sizes(hs_draft *d);
void hs_check_ground(hs_draft *d);
void hs_check_features(hs_draft *d);
void hs_check_carbon(hs_draft *d);

/** Index of a face by name, or -1. */
int hs_draft_face(const hs_draft *d, const char *name);

/** Names of all faces, for hs_reader_suggest; `list` has room for HS_MAX_FACES. */
hs_words hs_draft_face_names(const hs_draft *d, const char **list);

#endif
